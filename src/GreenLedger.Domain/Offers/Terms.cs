namespace GreenLedger.Domain.Offers;

/// <summary>
/// The terms that an offer stands on: delivery rule and its named place, until when it holds, and when the coffee can be
/// had (as written, and as a day where one could be read).
/// </summary>
/// <param name="LeastBags">The fewest bags that the seller parts with; null where that is not said.</param>
public sealed record Terms(
    Incoterm? Incoterm,
    string? Place,
    DateOnly? ValidUntil,
    string? Availability = null,
    DateOnly? AvailableFrom = null,
    int? LeastBags = null);
