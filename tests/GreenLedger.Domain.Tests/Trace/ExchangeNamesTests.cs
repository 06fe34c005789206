using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Trace;

namespace GreenLedger.Domain.Tests.Trace;

public sealed class ExchangeNamesTests
{
    private readonly ExchangeNames _names = new();
    private readonly Lot _lot = new("CA-17", "Cerro Alto washed");

    [Fact]
    public void Without_an_address_everything_is_a_uuid()
    {
        Assert.Equal($"urn:uuid:{_lot.Id}", _names.LotClass(_lot));
        Assert.Equal($"urn:uuid:{_lot.Id}", _names.Of("lot", _lot.Id.Value));
    }

    [Fact]
    public void Below_a_web_address_a_lot_is_an_address()
    {
        _names.State("https://trace.sorrel-roasters.example/ ", null, null);

        Assert.Equal($"https://trace.sorrel-roasters.example/lot/{_lot.Id}", _names.LotClass(_lot));
    }

    /// <summary>GS1 EPC Tag Data Standard 2.0, LGTIN (from memory): urn:epc:class:lgtin:CompanyPrefix.ItemRefAndIndicator.Lot, its example prefix 4012345 and item 012345.</summary>
    [Fact]
    public void With_a_company_prefix_a_lot_is_an_lgtin()
    {
        _names.State(null, "4012345", "012345");

        Assert.Equal("urn:epc:class:lgtin:4012345.012345.CA-17", _names.LotClass(_lot));
        Assert.Equal($"urn:uuid:{_lot.Id}", Renamed("A reference of a lot that is far too long"));
    }

    [Theory]
    [InlineData("trace.example", null, null, "in full")]
    [InlineData("ftp://trace.example", null, null, "in full")]
    [InlineData(null, "12345", "01234567", "6 to 12 digits")]
    [InlineData(null, "4012345", null, "stand together")]
    [InlineData(null, "4012345", "01234", "13 digits together")]
    [InlineData(null, "40123-5", "012345", "digits only")]
    public void What_names_nothing_is_refused(string? address, string? prefix, string? item, string said)
    {
        var refused = Assert.Throws<RuleBrokenException>(() => _names.State(address, prefix, item));

        Assert.Contains(said, refused.Message, StringComparison.Ordinal);
        Assert.Null(_names.WebAddress);
    }

    /// <summary>Worked by hand: 401234500000 with weights 1 and 3 from the left is 31, 9 short of the next ten. GS1 General Specifications, check digit (from memory).</summary>
    [Theory]
    [InlineData("4012345000009", true)]
    [InlineData("4012345000008", false)]
    [InlineData("401234500000", false)]
    public void A_location_number_has_thirteen_digits_of_which_the_last_checks(string gln, bool isTaken)
    {
        Assert.Equal(isTaken, Record.Exception(() => _names.State(null, null, null, gln)) is null);
        Assert.Equal(isTaken, _names.BillOfLading("MSCU 12/3") == $"urn:epcglobal:cbv:bt:{gln}:MSCU%2012%2F3");
    }

    /// <summary>RFC 9562, 5.8: version 8, variant 10.</summary>
    [Fact]
    public void What_has_no_identity_gets_one_that_stays()
    {
        var name = ExchangeNames.EventId("movement", _lot.Id.Value);

        Assert.Equal(name, ExchangeNames.EventId("movement", _lot.Id.Value));
        Assert.NotEqual(name, ExchangeNames.EventId("shipping", _lot.Id.Value));
        Assert.Matches("^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$", name);
    }

    private string Renamed(string reference)
    {
        _lot.Rename(reference, "Cerro Alto washed");
        return _names.LotClass(_lot);
    }
}
