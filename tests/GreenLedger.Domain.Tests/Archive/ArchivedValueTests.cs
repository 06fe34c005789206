using GreenLedger.Domain.Archive;

namespace GreenLedger.Domain.Tests.Archive;

/// <summary>What a cell of an archive says, by the rules that its README.txt states, and that it comes back as it was.</summary>
public sealed class ArchivedValueTests
{
    public static TheoryData<ColumnKind, object?, string> Values => new()
    {
        { ColumnKind.Text, "Finca La Loma", "Finca La Loma" },
        { ColumnKind.Text, null, "" },
        { ColumnKind.Text, "", @"\" },
        { ColumnKind.Text, @"\", @"\\" },
        { ColumnKind.Text, @"\\server", @"\\\server" },
        { ColumnKind.Whole, long.MinValue, "-9223372036854775808" },
        { ColumnKind.Exact, 1.500m, "1.5" },
        { ColumnKind.Number, 0.1 + 0.2, "0.30000000000000004" },
        { ColumnKind.YesNo, true, "true" },
        { ColumnKind.Day, new DateOnly(2026, 11, 30), "2026-11-30" },
        { ColumnKind.Moment, new DateTime(2026, 11, 30, 7, 8, 9, 120, DateTimeKind.Utc), "2026-11-30T07:08:09.120000Z" },
        { ColumnKind.Identity, Guid.Parse("0193F1AB-0000-7000-8000-00000000000A"), "0193f1ab-0000-7000-8000-00000000000a" },
    };

    [Theory]
    [MemberData(nameof(Values))]
    public void A_value_is_written_by_the_rules_and_comes_back(ColumnKind kind, object? value, string cell)
    {
        var column = Column(kind, mayBeEmpty: true);

        Assert.Equal(cell, ArchivedValue.Write(value, column));
        Assert.Equal(value, ArchivedValue.Read(cell, column));
    }

    [Fact]
    public void Where_a_text_must_be_there_an_empty_cell_is_a_text_without_letters()
    {
        var column = Column(ColumnKind.Text, mayBeEmpty: false);

        Assert.Equal("", ArchivedValue.Write("", column));
        Assert.Equal("", ArchivedValue.Read("", column));
        Assert.Equal(@"\", ArchivedValue.Read(@"\", column));
    }

    [Fact]
    public void A_moment_keeps_millionths_of_a_second_and_no_more()
    {
        var column = Column(ColumnKind.Moment, mayBeEmpty: false);

        Assert.Equal("2026-11-30T00:00:00.123456Z", ArchivedValue.Write(new DateTime(2026, 11, 30, 0, 0, 0, DateTimeKind.Utc).AddTicks(1_234_569), column));
    }

    [Fact]
    public void Lists_are_JSON_with_their_letters_as_they_are()
    {
        var texts = new ArchiveColumn("Descriptors", ColumnKind.List, ColumnKind.Text, false, "", "", "");
        var numbers = new ArchiveColumn("Order", ColumnKind.List, ColumnKind.Whole, false, "", "", "");

        Assert.Equal("[\"café\",\"a \\\"b\\\"\"]", ArchivedValue.Write(new[] { "café", "a \"b\"" }, texts));
        Assert.Equal(new[] { "café", "a \"b\"" }, ArchivedValue.Read("[\"café\",\"a \\\"b\\\"\"]", texts));
        Assert.Equal(new[] { 3, 1 }, ArchivedValue.Read("[3,1]", numbers));
    }

    [Theory]
    [InlineData(ColumnKind.Whole, "1.5")]
    [InlineData(ColumnKind.Day, "30.11.2026")]
    [InlineData(ColumnKind.Moment, "2026-11-30")]
    [InlineData(ColumnKind.YesNo, "yes")]
    [InlineData(ColumnKind.Identity, "7")]
    [InlineData(ColumnKind.List, "[1")]
    public void What_is_no_such_value_is_refused_with_the_column_named(ColumnKind kind, string cell)
    {
        var refused = Assert.Throws<RuleBrokenException>(() => ArchivedValue.Read(cell, Column(kind, mayBeEmpty: true)));

        Assert.Contains("Amount is no ", refused.Message, StringComparison.Ordinal);
        Assert.Contains(cell, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_where_something_must_be_is_refused()
    {
        var refused = Assert.Throws<RuleBrokenException>(() => ArchivedValue.Read("", Column(ColumnKind.Whole, mayBeEmpty: false)));

        Assert.Contains("Amount is empty", refused.Message, StringComparison.Ordinal);
    }

    private static ArchiveColumn Column(ColumnKind kind, bool mayBeEmpty) =>
        new("Amount", kind, kind == ColumnKind.List ? ColumnKind.Whole : null, mayBeEmpty, "", "", "");
}
