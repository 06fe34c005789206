namespace GreenLedger.Data.Choosing;

/// <summary>Which offers a shortlist looks at; null or empty asks nothing.</summary>
/// <param name="Text">Part of a reference, lot, place or supplier.</param>
public sealed record ShortlistFilter(string? Text = null);
