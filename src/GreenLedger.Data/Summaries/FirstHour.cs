namespace GreenLedger.Data.Summaries;

/// <summary>How many of each the ledger holds.</summary>
public sealed record FirstHour(
    string House, int Routes, int Quotes, int OfferLists, int Offers, int Lots, int CuppedSamples, int RuleSets, int Decisions);
