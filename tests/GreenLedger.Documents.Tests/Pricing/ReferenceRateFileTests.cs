using System.IO.Compression;
using System.Text;
using GreenLedger.Documents.Pricing;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Documents.Tests.Pricing;

public sealed class ReferenceRateFileTests
{
    // The form of the daily and historic XML: handbook, trade 9.4.
    private const string Xml = """
        <?xml version="1.0" encoding="UTF-8"?>
        <gesmes:Envelope xmlns:gesmes="http://www.gesmes.org/xml/2002-08-01" xmlns="http://www.ecb.int/vocabulary/2002-08-01/eurofxref">
          <gesmes:subject>Reference rates</gesmes:subject>
          <gesmes:Sender><gesmes:name>European Central Bank</gesmes:name></gesmes:Sender>
          <Cube>
            <Cube time="2026-11-24"><Cube currency="USD" rate="1.1600"/><Cube currency="IDR" rate="18123.45"/></Cube>
            <Cube time="2026-11-23"><Cube currency="USD" rate="1.1585"/></Cube>
          </Cube>
        </gesmes:Envelope>
        """;

    // The form of the historic CSV: trailing comma, N/A, closed currencies as columns (handbook, trade 9.4).
    private const string Csv = "Date,USD,GBP,HRK,\n2026-11-24,1.1600,0.8700,N/A,\n2022-12-30,1.0666,0.88693,7.5365,\n";

    private static readonly RateLine[] CsvLines =
    [
        new("USD", new(2026, 11, 24), 1.16m), new("GBP", new(2026, 11, 24), 0.87m),
        new("USD", new(2022, 12, 30), 1.0666m), new("GBP", new(2022, 12, 30), 0.88693m), new("HRK", new(2022, 12, 30), 7.5365m),
    ];

    [Fact]
    public void The_XML_of_several_days_is_read()
    {
        var file = Read(Xml);

        Assert.Empty(file.Problems);
        Assert.Equal(
            [new("USD", new(2026, 11, 24), 1.16m), new("IDR", new(2026, 11, 24), 18123.45m), new("USD", new(2026, 11, 23), 1.1585m)],
            file.Lines);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\uFEFF")]
    public void The_historic_CSV_is_read_with_its_gaps_and_closed_currencies(string mark) =>
        Assert.Equal(CsvLines, Read(mark + Csv).Lines);

    [Fact]
    public void The_daily_CSV_has_spaces_and_a_day_in_words() => // form of eurofxref.csv, from memory
        Assert.Equal([new("USD", new(2026, 11, 24), 1.16m)], Read("Date, USD, \r\n24 November 2026, 1.1600, \r\n").Lines);

    [Fact]
    public void A_zipped_file_is_unpacked() => Assert.Equal(CsvLines, ReferenceRateFile.Read(Zip("eurofxref-hist.csv", Csv)).Lines);

    [Fact]
    public void A_document_type_with_entities_is_refused_and_nothing_is_read()
    {
        var file = Read(Xml.Replace("<gesmes:Envelope", "<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/passwd\">]><gesmes:Envelope", StringComparison.Ordinal));

        Assert.Empty(file.Lines);
        Assert.Contains("document type", Assert.Single(file.Problems).Message);
    }

    [Fact]
    public void An_archive_that_unpacks_beyond_the_limit_is_refused()
    {
        var bomb = Zip("eurofxref-hist.csv", new string('0', 65 * 1024 * 1024));

        var file = ReferenceRateFile.Read(bomb);

        Assert.True(bomb.Length < 1024 * 1024);
        Assert.Contains("too large", Assert.Single(file.Problems).Message);
    }

    [Theory]
    [InlineData("")]
    [InlineData("name;price\nSantos;3.10\n")]
    [InlineData("<html><body>Rates</body></html>")]
    [InlineData("PK\u0003\u0004 no archive at all")]
    public void Another_kind_of_file_is_refused_in_a_sentence(string content)
    {
        var file = Read(content);

        Assert.Empty(file.Lines);
        Assert.Single(file.Problems);
    }

    [Fact]
    public void An_archive_without_rates_is_refused() => Assert.Single(ReferenceRateFile.Read(Zip("notes.txt", "hello")).Problems);

    [Fact]
    public void Every_figure_that_is_no_rate_is_told_with_its_place_and_nothing_is_taken()
    {
        var file = Read("Date,USD,GBP,\n2026-11-24,1.16,zero,\n2026-11-23,-1,0.87,\nyesterday,1,1,\n");

        Assert.Empty(file.Lines);
        Assert.Equal([(2, "GBP"), (3, "USD"), (4, null)], file.Problems.Select(problem => (problem.Row!.Value, problem.Column)));
    }

    private static RateFile Read(string content) => ReferenceRateFile.Read(Encoding.UTF8.GetBytes(content));

    private static byte[] Zip(string name, string content)
    {
        using var file = new MemoryStream();
        using (var archive = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true))
        using (var entry = archive.CreateEntry(name).Open())
        {
            entry.Write(Encoding.UTF8.GetBytes(content));
        }

        return file.ToArray();
    }
}
