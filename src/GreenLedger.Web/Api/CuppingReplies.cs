using System.Text.Json;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.Cupping;

namespace GreenLedger.Web.Api;

/// <summary>
/// One sheet: points of each scale attribute by its key, good cups of the cup-counted ones (5 where left out), and cups
/// with each deduction (0 where left out). A sheet that was handed in is changed only with a reason.
/// </summary>
internal sealed record SheetRequest(
    string Code,
    IReadOnlyDictionary<string, decimal> Marks,
    IReadOnlyDictionary<string, int>? GoodCups = null,
    IReadOnlyDictionary<string, int>? DeductedCups = null,
    IReadOnlyList<string>? Descriptors = null,
    string? Note = null,
    decimal? StatedTotal = null,
    string? Reason = null);

internal sealed record SheetReply(string Code, decimal Total, decimal Unrounded, decimal? StatedTotal, int Version, bool IsHandedIn)
{
    public static SheetReply Of(ScoreSheet sheet, string code, int version) =>
        new(code, sheet.Total.Points, sheet.Unrounded.Points, sheet.StatedTotal?.Points, version, !sheet.IsReopened);
}

internal sealed record FormReply(Guid Id, string Code, string Name, string Edition, int Revision, FormRules Rules)
{
    public static FormReply Of(CuppingForm form) => new(form.Id.Value, form.Code, form.Name, form.Edition, form.Revision, form.Rules);
}

/// <summary>A session of a list.</summary>
internal sealed record SessionReply(
    Guid Id, string Title, DateOnly HeldOn, string Form, int Samples, int Sheets, int Cuppers, bool IsClosed, DateTimeOffset? ClosedAt, bool IsPast)
{
    public static SessionReply Of(SessionRow row) => new(
        row.Id.Value, row.Title, row.HeldOn, row.FormName, row.Samples, row.Sheets, row.Cuppers, row.ClosedAt is not null, row.ClosedAt, row.IsPast);
}

/// <summary>An open session: codes, and how many sheets each has.</summary>
internal sealed record OpenSessionReply(
    Guid Id, string Title, DateOnly HeldOn, string Form, int CupsPerSample, bool IsClosed, IReadOnlyList<OpenSampleReply> Samples)
{
    public static OpenSessionReply Of(BlindTable table) => new(
        table.Id.Value,
        table.Title,
        table.HeldOn,
        table.Form.Code,
        table.CupsPerSample,
        false,
        [.. table.Samples.Select(sample => new OpenSampleReply(sample.Position, sample.Flight, sample.Code, table.SheetsByCode.GetValueOrDefault(sample.Code)))]);

    public static OpenSessionReply Of(CuppingSession session) => new(
        session.Id.Value,
        session.Title,
        session.HeldOn,
        session.Form.Code,
        session.CupsPerSample,
        false,
        [.. session.Samples.Select(sample => new OpenSampleReply(sample.Position, sample.Flight, sample.Code, session.Sheets.Count(sheet => sheet.SampleId == sample.SampleId && sheet.Repeat == sample.Repeat)))]);
}

internal sealed record OpenSampleReply(int Position, int Flight, string Code, int Sheets);

/// <summary>A closed session: the joint fit, a result for each sample, and every sheet.</summary>
internal sealed record ClosedSessionReply(
    Guid Id,
    string Title,
    DateOnly HeldOn,
    string Form,
    int CupsPerSample,
    bool IsClosed,
    DateTimeOffset? ClosedAt,
    int Parts,
    ErrorSource ErrorFrom,
    decimal? ResidualDeviation,
    int DegreesOfFreedom,
    IReadOnlyList<SampleResultReply> Samples,
    IReadOnlyList<CupperReply> Cuppers,
    IReadOnlyList<ClosedSheetReply> Sheets)
{
    public static ClosedSessionReply Of(CuppingSession session, IReadOnlyList<TableSampleRow> key)
    {
        var rows = key.ToDictionary(row => (row.SampleId, row.Repeat));
        var result = session.Result!;
        return new ClosedSessionReply(
            session.Id.Value,
            session.Title,
            session.HeldOn,
            session.Form.Code,
            session.CupsPerSample,
            true,
            session.ClosedAt,
            result.Parts,
            result.ErrorFrom,
            result.ResidualDeviation?.Points,
            result.DegreesOfFreedom,
            [.. result.Samples.Select(sample => SampleResultReply.Of(sample, rows[(sample.SampleId, 0)]))],
            [.. result.Cuppers.Select(cupper => new CupperReply(cupper.CupperName, cupper.Effect.Points, cupper.Sheets))],
            [.. session.Sheets.Select(sheet => ClosedSheetReply.Of(sheet, rows[(sheet.SampleId, sheet.Repeat)]))]);
    }
}

/// <summary>The result of one sample; scores are points of the session's form.</summary>
internal sealed record SampleResultReply(
    string Code,
    string Label,
    string Ref,
    decimal PlainMean,
    decimal Fitted,
    decimal StandardError,
    decimal Low,
    decimal High,
    HoldsFor HoldsFor,
    ErrorSource ErrorFrom,
    int? DegreesOfFreedom,
    decimal TheseCuppersError,
    decimal AnyCupperError,
    int Cuppers,
    int Sheets,
    int Part)
{
    public static SampleResultReply Of(SampleResult result, TableSampleRow row) => new(
        row.Code,
        row.LabelCode,
        row.LotRef,
        result.PlainMean.Points,
        result.Fitted.Points,
        result.StandardError.Points,
        result.Low.Points,
        result.High.Points,
        result.HoldsFor,
        result.ErrorFrom,
        result.DegreesOfFreedom,
        result.TheseCuppersError.Points,
        result.AnyCupperError.Points,
        result.Cuppers,
        result.Sheets,
        result.Part);
}

internal sealed record CupperReply(string Cupper, decimal Effect, int Sheets);

internal sealed record ClosedSheetReply(
    string Code, string Ref, string Cupper, decimal Total, decimal Unrounded, decimal? StatedTotal, IReadOnlyList<string> Descriptors, string? Note)
{
    public static ClosedSheetReply Of(ScoreSheet sheet, TableSampleRow row) => new(
        row.Code, row.LotRef, sheet.CupperName, sheet.Total.Points, sheet.Unrounded.Points, sheet.StatedTotal?.Points, sheet.Descriptors, sheet.Note);
}

internal sealed record LotResultReply(
    Guid SessionId,
    string Title,
    DateOnly HeldOn,
    string Form,
    string Label,
    decimal PlainMean,
    decimal Fitted,
    decimal StandardError,
    decimal Low,
    decimal High,
    HoldsFor HoldsFor,
    ErrorSource ErrorFrom,
    int Cuppers,
    int Sheets)
{
    public static LotResultReply Of(LotResultRow row) => new(
        row.SessionId.Value,
        row.Title,
        row.HeldOn,
        row.FormCode,
        row.LabelCode,
        row.Result.PlainMean.Points,
        row.Result.Fitted.Points,
        row.Result.StandardError.Points,
        row.Result.Low.Points,
        row.Result.High.Points,
        row.Result.HoldsFor,
        row.Result.ErrorFrom,
        row.Result.Cuppers,
        row.Result.Sheets);
}

internal sealed record AcceptedReply(int Row, string Ref, string Cupper, DateOnly? HeldOn, decimal Computed, decimal? Stated, bool IsNewLot);

internal sealed record SetAsideReply(int Row, IReadOnlyList<string> Values, string Reason);

/// <summary>A total of the file that the row does not add up to; listed, not corrected.</summary>
internal sealed record DisagreementReply(int Row, string Ref, decimal Computed, decimal Stated);

internal sealed record ColumnReply(string Heading, string Meaning);

/// <summary>What a file of past results gives, or gave if it was stored.</summary>
internal sealed record ImportReply(
    bool Committed,
    bool AlreadyTaken,
    string Form,
    int Accepted,
    IReadOnlyList<SetAsideReply> SetAside,
    IReadOnlyList<DisagreementReply> Disagreements,
    IReadOnlyList<AcceptedReply> Rows,
    IReadOnlyList<ColumnReply> Columns,
    IReadOnlyList<Guid> Sessions)
{
    public static ImportReply Of(PastPreview preview, PastTaking? taking) => new(
        taking is not null,
        preview.IsAlreadyTaken,
        preview.List.Form.Code,
        preview.List.Accepted.Count,
        [.. preview.List.SetAside.Select(aside => new SetAsideReply(aside.Row, aside.Values, aside.Problem.Message))],
        [.. preview.List.Disagreements.Select(row => new DisagreementReply(row.Row, row.Name, row.Computed, row.Result.StatedTotal!.Value))],
        [.. preview.List.Accepted.Select(row => new AcceptedReply(
            row.Row, row.Name, row.Result.Cupper, row.HeldOn, row.Computed, row.Result.StatedTotal, !preview.Known.ContainsKey(row.Name)))],
        [.. preview.List.Mapping.Headings.Zip(preview.List.Mapping.Meanings, (heading, meaning) => new ColumnReply(heading, meaning)).Where(column => column.Heading.Length > 0)],
        [.. (taking?.Sessions ?? []).Select(session => session.Id.Value)]);

    /// <summary>Corrections as a JSON object of heading to meaning.</summary>
    /// <exception cref="RuleBrokenException">The text is no such object.</exception>
    public static IReadOnlyDictionary<string, string> Mapping(string? json)
    {
        if (string.IsNullOrWhiteSpace(json))
        {
            return new Dictionary<string, string>();
        }

        try
        {
            return JsonSerializer.Deserialize<Dictionary<string, string>>(json) ?? [];
        }
        catch (JsonException)
        {
            throw new RuleBrokenException("The mapping is a JSON object of heading to meaning, such as {\"Cup\": \"total\"}.", "Mapping");
        }
    }
}
