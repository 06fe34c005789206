using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>One row of a list that could be read whole: what its lot is and what is asked for it.</summary>
public sealed record OfferRow
{
    /// <summary>As the sender's program shows it, counted from 1.</summary>
    public required int RowNumber { get; init; }

    public required string Ref { get; init; }

    public required string Name { get; init; }

    public string? Producer { get; init; }

    public ProducerKind ProducerKind { get; init; }

    public string? CountryCode { get; init; }

    public string? Region { get; init; }

    public string? Varieties { get; init; }

    /// <summary>Null when the word is none of the buyer's methods; the word itself is kept.</summary>
    public ProcessMethod? Process { get; init; }

    public string? ProcessAsWritten { get; init; }

    public string? CropYear { get; init; }

    public string? Grade { get; init; }

    public string? Screen { get; init; }

    public int? AltitudeFrom { get; init; }

    public int? AltitudeTo { get; init; }

    public Score? StatedScore { get; init; }

    public required Packing Packing { get; init; }

    public required Asking Asking { get; init; }

    public required Terms Terms { get; init; }

    public OfferState State { get; init; }

    public IReadOnlyList<string> Certificates { get; init; } = [];

    public string? IcoMark { get; init; }

    public Percent? StatedMoisture { get; init; }

    public string? Notes { get; init; }

    /// <summary>By what the lot is told from others of the same list: reference and crop year.</summary>
    internal string Key => KeyOf(Ref, CropYear);

    internal static string KeyOf(string @ref, string? cropYear) => $"{SearchText.Of(@ref)}|{cropYear}";
}
