using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Cupping;

/// <summary>A cupper's record on one form, as it is shown to the cupper and to the lead cupper.</summary>
/// <param name="Forms">Every form that the cupper has cupped on; scores of two forms are never put together.</param>
public sealed record CupperRecordView(CupperRecord Record, CuppedFormRow Form, IReadOnlyList<CuppedFormRow> Forms, BiasDrawing? Drawing)
{
    /// <summary>Null where the cupper has no closed session, or none on this form; without a form the one most cupped on.</summary>
    public static async Task<CupperRecordView?> FindAsync(
        CupperRecordQuery query, Id<Person> cupper, Id<CuppingForm>? form, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(query);
        var forms = await query.FormsAsync(cupper, cancellationToken);
        if (forms.FirstOrDefault(row => form is null || row.Id == form) is not { } chosen)
        {
            return null;
        }

        var record = CupperRecord.Of(await query.HistoryAsync(cupper, chosen.Id, cancellationToken));
        return new CupperRecordView(record, chosen, forms, BiasDrawing.Of(record));
    }

    /// <summary>Whether the session lies outside the control limits; null where it has no bias or there are no limits.</summary>
    public bool? IsOutside(SessionPerformance session) => session.Bias is { } bias && Record.BiasChart is { } chart
        ? bias < chart.Lower || bias > chart.Upper
        : null;
}
