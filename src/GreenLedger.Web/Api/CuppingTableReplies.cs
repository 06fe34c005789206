using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Cupping;

namespace GreenLedger.Web.Api;

/// <summary>
/// A change of the caller's sheet. The key is a UUID that the caller makes once for the change and sends again with it; the
/// version is the last that the caller knows of the sheet, 0 for one not begun. Values stand under the names of the
/// sheet's fields, such as <c>mark.flavor</c>; empty text clears a field.
/// </summary>
internal sealed record ChangeRequest(Guid Key, int Version, IReadOnlyDictionary<string, string> Values);

internal sealed record ChangeReply(int Version);

internal sealed record SheetVersion(int Version, IReadOnlyDictionary<string, string> Values);

/// <summary>What was sent and what is stored, where another device was faster.</summary>
internal sealed record ConflictReply(string Detail, SheetVersion Yours, SheetVersion Stored);

internal sealed record ReopenRequest(string? Reason);

internal sealed record ExtendRequest(int Minutes);

/// <summary>The table's clock. A flight that is not poured yet is not in it; seconds are counted from the pour.</summary>
internal sealed record ClockReply(DateTimeOffset Now, bool IsClosed, IReadOnlyList<FlightReply> Flights)
{
    public static ClockReply Of(IEnumerable<PouredFlight> flights, bool isClosed, DateTimeOffset now) => new(
        now, isClosed, [.. flights.OrderBy(flight => flight.Number).Select(flight => new FlightReply(flight.Number, flight.PouredAt, flight.ExtendedMinutes))]);
}

internal sealed record FlightReply(int Number, DateTimeOffset PouredAt, int ExtendedMinutes);

/// <summary>A table as one cupper's phone needs it.</summary>
internal sealed record TableReply(
    Guid Id,
    string Title,
    string Form,
    FormRules Rules,
    int Cups,
    bool MayCup,
    bool MayPour,
    bool IsByPlace,
    Blinding Blinding,
    IReadOnlyList<TastingStep> Steps,
    DescriptiveRules? Descriptive,
    IReadOnlyList<CodeReply> Codes,
    IReadOnlyList<WordReply> Words,
    ClockReply Clock)
{
    public static TableReply Of(CupperTable table, DateTimeOffset now) => new(
        table.Id.Value,
        table.Title,
        table.Form.ToString(),
        table.Form.Rules,
        table.Cups,
        table.MayCup,
        table.MayPour,
        table.IsByPlace,
        table.Blinding,
        table.Protocol.Steps,
        table.Descriptive?.Rules,
        [.. table.Codes.Select(code => new CodeReply(code.Code, code.Flight, code.Version, code.Values, code.IsHandedIn, code.Total))],
        [.. table.Words.Select(word => new WordReply(word.Word, word.Family))],
        ClockReply.Of(table.Flights, table.IsClosed, now));
}

/// <summary>A word of the house's list for what is tasted.</summary>
internal sealed record WordReply(string Word, string Family);

internal sealed record CodeReply(string Code, int Flight, int Version, IReadOnlyDictionary<string, string> Values, bool IsHandedIn, decimal? Total);
