using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Tests.Offers;

public sealed class NamedLotTests
{
    private static readonly NamedLot[] Lots =
    [
        new(Id<Lot>.New(), "GV-12", "Sítio Olho d'Água", "003-0037-1204"),
        new(Id<Lot>.New(), "GV-13", "Loma Alta"),
        new(Id<Lot>.New(), "KN/7", "Loma Alta"),
        new(Id<Lot>.New(), "Loma Baja", "GV-13"),
    ];

    /// <summary>Case, accents, spaces and punctuation do not count; a mark is padded (handbook trade.md 5.1).</summary>
    [Theory]
    [InlineData("gv 12", "GV-12")]
    [InlineData(" GV_12 ", "GV-12")]
    [InlineData("SITIO OLHO D AGUA", "GV-12")]
    [InlineData("3/37/1204", "GV-12")]
    [InlineData("003-0037-1204", "GV-12")]
    [InlineData("kn-7", "KN/7")]
    [InlineData("Loma alta", "GV-13 KN/7")]
    [InlineData("Loma", "")]
    [InlineData("3/37/1205", "")]
    public void A_name_means_the_lots_that_are_written_so(string name, string refs) => Assert.Equal(refs, Refs(name));

    [Fact]
    public void A_reference_goes_before_a_name() => Assert.Equal("GV-13", Refs("gv-13"));

    [Fact]
    public void Every_name_that_fits_is_found_under_its_key()
    {
        Assert.All(["gv 12", "3/37/1204", "SITIO OLHO D AGUA"], name => Assert.Contains(NamedLot.KeyOf(name), Lots[0].Keys));
    }

    [Fact]
    public void Several_lots_are_named_in_the_sentence()
    {
        Assert.Equal(
            "'Loma alta' may be GV-13 (Loma Alta), KN/7 (Loma Alta): write the label code of the sample that was cupped instead.",
            NamedLot.SeveralSentence("Loma alta", NamedLot.Meant("Loma alta", Lots)));
    }

    private static string Refs(string name) => string.Join(' ', NamedLot.Meant(name, Lots).Select(lot => lot.Ref));
}
