using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Documents.Samples;

/// <summary>One sample that a letter asks for.</summary>
public sealed record RequestedSample(string LotRef, string LotName, SampleKind Kind, Weight Weight, string LabelCode);

/// <summary>What a letter to one sender asks for.</summary>
/// <param name="House">The buying house that asks.</param>
/// <param name="Supplier">Whom it is for; null leaves the greeting general.</param>
/// <param name="Language">ISO 639-1; a language without words here is answered in English.</param>
/// <param name="On">The day of the letter.</param>
/// <param name="By">Who signs.</param>
public sealed record SampleRequest(string House, string? Supplier, string? Language, DateOnly On, string By, IReadOnlyList<RequestedSample> Samples);
