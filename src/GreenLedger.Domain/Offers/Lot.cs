using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// One coffee: one producer's or station's harvest of a variety and process, bagged together. It is born when it is
/// first offered and stays small: later rooms point back to it.
/// </summary>
public sealed class Lot
{
    private readonly List<string> _certificates = [];
    private string? _searchText;

    private Lot()
    {
        Ref = "";
        Name = "";
    }

    public Lot(string @ref, string name, Id<Supplier>? supplierId = null)
    {
        Id = Id<Lot>.New();
        SupplierId = supplierId;
        Ref = Rule.Text(@ref, "The reference of the lot", field: nameof(Ref));
        Name = Rule.Text(name, "The name of the lot", field: nameof(Name));
    }

    public Id<Lot> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Supplier>? SupplierId { get; private set; }

    public Id<Producer>? ProducerId { get; private set; }

    /// <summary>Country of origin, ISO 3166-1 alpha-2; null while no list has said it.</summary>
    public string? CountryCode { get; private set; }

    public string? Region { get; private set; }

    /// <summary>The seller's reference or mark; an outturn counts together with its grade.</summary>
    public string Ref { get; private set; }

    public string Name { get; private set; }

    public string? Varieties { get; private set; }

    /// <summary>Null while the word for the process is not one of the buyer's methods.</summary>
    public Id<ProcessMethod>? ProcessMethodId { get; private set; }

    public string? ProcessAsWritten { get; private set; }

    /// <summary>A label of <see cref="Origins.CropYear"/>: <c>2026/27</c>.</summary>
    public string? CropYear { get; private set; }

    public string? Grade { get; private set; }

    public string? Screen { get; private set; }

    public int? AltitudeFrom { get; private set; }

    public int? AltitudeTo { get; private set; }

    public int? Bags { get; private set; }

    public Weight? BagWeight { get; private set; }

    public Weight? NetWeight { get; private set; }

    /// <summary>Short names of the schemes, in lower case: <c>organic</c>, <c>fairtrade</c>.</summary>
    public IReadOnlyList<string> Certificates => _certificates;

    /// <summary>The house's own buying programme that the lot counts to: an agreement of years with growers, a project. Null for none.</summary>
    public string? Programme { get; private set; }

    /// <summary>In the form of <see cref="Offers.IcoMark"/> where it could be read, else as written.</summary>
    public string? IcoMark { get; private set; }

    /// <summary>Moisture that the seller states; our own is in the grading.</summary>
    public Percent? StatedMoisture { get; private set; }

    public string? Notes { get; private set; }

    /// <summary>Put together when it is asked for, since several acts in a row change what it is made of.</summary>
    public string SearchText
    {
        get => _searchText ??= Measures.SearchText.Of(Ref, Name, Varieties, Region, CountryCode, ProcessAsWritten, Grade, IcoMark);
        private set => _searchText = value;
    }

    public void Rename(string @ref, string name)
    {
        Ref = Rule.Text(@ref, "The reference of the lot", field: nameof(Ref));
        Name = Rule.Text(name, "The name of the lot", field: nameof(Name));
        Index();
    }

    public void Grow(string? countryCode, string? region, Id<Producer>? producerId, string? varieties, int? altitudeFrom, int? altitudeTo)
    {
        Rule.Require(altitudeFrom is null or (>= 0 and <= 4000), "Coffee grows between 0 and 4000 m: please check the altitude.", nameof(AltitudeFrom));
        Rule.Require(altitudeTo is null or (>= 0 and <= 4000), "Coffee grows between 0 and 4000 m: please check the altitude.", nameof(AltitudeTo));
        CountryCode = Rule.OptionalText(countryCode, "The country", 2, nameof(CountryCode))?.ToUpperInvariant();
        Region = Rule.OptionalText(region, "The region", field: nameof(Region));
        ProducerId = producerId;
        Varieties = Rule.OptionalText(varieties, "The varieties", field: nameof(Varieties));
        AltitudeFrom = altitudeFrom;
        AltitudeTo = altitudeTo;
        Index();
    }

    /// <summary>The word is kept as written whether or not a method is known for it.</summary>
    public void Process(Id<ProcessMethod>? methodId, string? asWritten)
    {
        ProcessMethodId = methodId;
        ProcessAsWritten = Rule.OptionalText(asWritten, "The process", field: nameof(ProcessAsWritten));
        Index();
    }

    public void Prepare(string? cropYear, string? grade, string? screen, Percent? statedMoisture)
    {
        Rule.Require(statedMoisture is null or { TenThousandths: >= 0 and <= 1_000_000 }, "Moisture lies between 0 and 100 %.", nameof(StatedMoisture));
        CropYear = Origins.CropYear.Read(cropYear) ?? Rule.OptionalText(cropYear, "The crop year", 20, nameof(CropYear));
        Grade = Rule.OptionalText(grade, "The grade", 80, nameof(Grade));
        Screen = Rule.OptionalText(screen, "The screen", 80, nameof(Screen));
        StatedMoisture = statedMoisture;
        Index();
    }

    public void Pack(Packing packing)
    {
        Rule.Require(packing.Bags is null or >= 0, "The number of bags cannot be negative.", nameof(Bags));
        Rule.Require(packing.BagWeight is null || packing.BagWeight > Weight.Zero, "A bag holds more than 0 kg.", nameof(BagWeight));
        Rule.Require(packing.StatedNet is null || packing.StatedNet >= Weight.Zero, "The net weight cannot be negative.", nameof(NetWeight));
        Bags = packing.Bags;
        BagWeight = packing.BagWeight;
        NetWeight = packing.Net;
    }

    public void Certify(IEnumerable<string> certificates)
    {
        var kept = certificates.Select(name => name.Trim().ToLowerInvariant()).Where(name => name.Length > 0).Distinct().Order(StringComparer.Ordinal).ToList();
        if (!kept.SequenceEqual(_certificates))
        {
            _certificates.Clear();
            _certificates.AddRange(kept);
        }
    }

    public void CountTo(string? programme) => Programme = Rule.OptionalText(programme, "The programme", 80, nameof(Programme));

    public void Mark(string? icoMark)
    {
        IcoMark = Offers.IcoMark.Normalise(icoMark) ?? Rule.OptionalText(icoMark, "The ICO mark", 80, nameof(IcoMark));
        Index();
    }

    public void Note(string? notes) => Notes = Rule.OptionalText(notes, "The notes", 2000, nameof(Notes));

    private void Index() => _searchText = null;
}
