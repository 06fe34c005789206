using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Origins;

/// <summary>
/// A country that grows coffee, keyed by its ISO 3166-1 alpha-2 code. Reference data that the buyer may edit: crop year,
/// harvest and bags are habits of the trade (handbook, trade 5.2), not rules.
/// </summary>
public sealed class Country
{
    private readonly List<string> _otherNames = [];

    private Country()
    {
        Code = "";
        Name = "";
        SearchText = "";
    }

    public Country(string code, string name)
    {
        Code = CheckedCode(code);
        Name = Rule.Text(name, "The name of the country", 80, nameof(Name));
        SearchText = "";
        Index();
    }

    /// <summary>ISO 3166-1 alpha-2, in capitals: <c>CO</c>.</summary>
    public string Code { get; private set; }

    public int Version { get; private set; }

    public string Name { get; private set; }

    /// <summary>The name in other languages and spellings, as offer lists write it.</summary>
    public IReadOnlyList<string> OtherNames => _otherNames;

    /// <summary>The country's number in ICO marks, three digits; null where the organisation gives none.</summary>
    public string? IcoCode { get; private set; }

    /// <summary>The month (1 to 12) in which the crop year begins; null where it is not known.</summary>
    public int? CropYearStart { get; private set; }

    /// <summary>First month of the main harvest, 1 to 12; indicative.</summary>
    public int? HarvestFrom { get; private set; }

    /// <summary>Last month of the main harvest, 1 to 12; smaller than the first where the harvest runs over New Year.</summary>
    public int? HarvestTo { get; private set; }

    /// <summary>What a bag usually holds, net.</summary>
    public Weight? UsualBag { get; private set; }

    /// <summary>Ports of loading by UN/LOCODE, parted by spaces: <c>COBUN COCTG COSMR</c>.</summary>
    public string? Ports { get; private set; }

    /// <summary>Of low risk under Regulation (EU) 2023/1115 (Implementing Regulation (EU) 2025/1093; handbook, trade 5.2 and 7.5): data that may change.</summary>
    public bool IsLowRisk { get; private set; }

    public string SearchText { get; private set; }

    public void Rename(string name, IEnumerable<string> otherNames)
    {
        Name = Rule.Text(name, "The name of the country", 80, nameof(Name));
        _otherNames.Clear();
        _otherNames.AddRange(otherNames.Select(other => other.Trim()).Where(other => other.Length > 0).Distinct());
        Index();
    }

    /// <summary>Says whether the country is of low risk of deforestation by the Union's list.</summary>
    public void Judge(bool isLowRisk) => IsLowRisk = isLowRisk;

    /// <summary>States the crop months; each is 1 to 12 or null where it is not known.</summary>
    public void StateHarvest(int? cropYearStart, int? from, int? to)
    {
        Rule.Require(IsMonth(cropYearStart), "The crop year begins in a month from 1 to 12.", nameof(CropYearStart));
        Rule.Require(IsMonth(from), "The harvest begins in a month from 1 to 12.", nameof(HarvestFrom));
        Rule.Require(IsMonth(to), "The harvest ends in a month from 1 to 12.", nameof(HarvestTo));
        CropYearStart = cropYearStart;
        HarvestFrom = from;
        HarvestTo = to;
    }

    public void StateTrade(string? icoCode, Weight? usualBag, string? ports)
    {
        var code = Rule.OptionalText(icoCode, "The ICO code", 3, nameof(IcoCode));
        Rule.Require(code is null || code.All(char.IsAsciiDigit), "An ICO country code has up to three digits, such as 003.", nameof(IcoCode));
        Rule.Require(usualBag is null || usualBag > Weight.Zero, "A bag holds more than 0 kg.", nameof(UsualBag));
        IcoCode = code?.PadLeft(3, '0');
        UsualBag = usualBag;
        Ports = Rule.OptionalText(ports, "The ports", 200, nameof(Ports))?.ToUpperInvariant();
    }

    /// <summary>The label of the crop that a harvest begun in this month belongs to: <c>2026/27</c>, or <c>2026</c> where the year begins in January.</summary>
    public string CropYearOf(DateOnly harvested)
    {
        var start = CropYearStart ?? 10;
        var year = harvested.Month >= start ? harvested.Year : harvested.Year - 1;
        return start == 1 ? CropYear.Of(year) : CropYear.Of(year, year + 1);
    }

    /// <summary>
    /// The last day of the main harvest of a crop; null where the crop's label or the harvest is not known. The harvest ends within
    /// the crop year that begins in <see cref="CropYearStart"/>.
    /// </summary>
    /// <param name="cropYear">A label of <see cref="CropYear"/>.</param>
    public DateOnly? HarvestEnd(string? cropYear)
    {
        if (HarvestTo is not { } month || CropYear.Read(cropYear) is not { } label)
        {
            return null;
        }

        var year = int.Parse(label[..4], CultureInfo.InvariantCulture);
        var end = month >= (CropYearStart ?? 10) ? year : year + 1;
        // A label of one year names the year of the harvest, whenever the crop year begins.
        return new DateOnly(label.Length == 4 ? year : end, month, 1).AddMonths(1).AddDays(-1);
    }

    private static string CheckedCode(string code)
    {
        var text = Rule.Text(code, "The code of the country", 2, nameof(Code)).ToUpperInvariant();
        Rule.Require(text.Length == 2 && text.All(char.IsAsciiLetterUpper), "A country code has two letters (ISO 3166-1), such as CO.", nameof(Code));
        return text;
    }

    private static bool IsMonth(int? month) => month is null or (>= 1 and <= 12);

    private void Index() => SearchText = Measures.SearchText.Of([Code, Name, .. _otherNames]);
}
