using System.Text;
using GreenLedger.Domain.Papers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace GreenLedger.Data.Papers;

/// <summary>Which entities are records of the history, which are parts of another one, and what a person calls them.</summary>
public static class RecordKinds
{
    private const string Rooms = "GreenLedger.Domain.";

    /// <summary>
    /// The history itself, files (whoever keeps one has a line of its own), the work of nodes, what is being written on a
    /// sheet, what follows from a grade, the stock ledger, the outbox, archives, erasures and copies of feedback (their lines say who and when themselves), and everything about signing in that is not the ledger's own.
    /// </summary>
    private static readonly HashSet<string> Unrecorded =
        [nameof(Change), nameof(StoredFile), nameof(StoredBytes), "Job", "SupplierMapping", "SheetDraft", "DraftChange", "GradeLimit", "Movement", "Holding", nameof(Message), "ArchiveTaking", nameof(Erasure), "FeedbackCopy"];

    /// <summary>Members that say nothing to a reader, or that nobody may read again.</summary>
    private static readonly HashSet<string> Silent = ["Version", "SearchText", "Hash"];

    /// <summary>Members that are written once and stand on the record's own page, in words: history would repeat them as JSON.</summary>
    private static readonly HashSet<string> Frozen = ["Decision.Rules", "Decision.Figures", "RulesRevision.Terms", "ContractVersion.Terms", "Claim.Case", "EarlierReceipt.Was", "MockRecall.Findings", "TastingProtocol.Steps", "DescriptiveForm.Rules", "SchemeRevision.Scheme", "LimitsRevision.Limits"];

    /// <summary>Where a record's name stands, the best first.</summary>
    private static readonly string[] Names = ["Name", "Title", "FileName", "Ref", "LabelCode", "Code", "CupperName", "Text", "Label", "Kind", "Screen"];

    public static bool IsRecorded(IReadOnlyEntityType type) =>
        type.ClrType.Namespace?.StartsWith(Rooms, StringComparison.Ordinal) == true && !Unrecorded.Contains(type.ClrType.Name);

    public static bool IsSilent(IReadOnlyPropertyBase member) =>
        Silent.Contains(member.Name) || Frozen.Contains(member.DeclaringType.ClrType.Name + "." + member.Name);

    /// <summary>The room of the house that a kind of record lives in; null for a kind that the ledger does not know.</summary>
    public static string? RoomOf(IReadOnlyModel model, string kind) =>
        Find(model, kind)?.ClrType.Namespace?[Rooms.Length..];

    public static IReadOnlyEntityType? Find(IReadOnlyModel model, string kind) =>
        model.GetEntityTypes().FirstOrDefault(type => type.ClrType.Name == kind && IsRecorded(type));

    /// <summary>
    /// The tie from a part to its whole: the whole lists its parts and takes them along when it goes. Null for a record
    /// of its own.
    /// </summary>
    public static IReadOnlyForeignKey? WholeOf(IReadOnlyEntityType type) => type.FindOwnership()
        ?? type.GetForeignKeys().FirstOrDefault(tie =>
            tie.PrincipalToDependent is not null && tie.DeleteBehavior == DeleteBehavior.Cascade && IsRecorded(tie.PrincipalEntityType));

    /// <summary>The kinds that have lines of their own, in the order of their words.</summary>
    public static IReadOnlyList<string> All(IReadOnlyModel model) =>
        [.. model.GetEntityTypes().Where(type => IsRecorded(type) && WholeOf(type) is null).Select(type => type.ClrType.Name).Order(StringComparer.Ordinal)];

    /// <summary>The member that a record is called by; null where it has none.</summary>
    public static IReadOnlyProperty? NameOf(IReadOnlyEntityType type) =>
        Names.Select(type.FindProperty).FirstOrDefault(member => member?.ClrType is { } clr && (clr == typeof(string) || clr == typeof(int)));

    /// <summary>A name of the model in words: <c>CuppingSession</c> is "cupping session".</summary>
    public static string Words(string name)
    {
        var words = new StringBuilder();
        for (var at = 0; at < name.Length; at++)
        {
            var starts = char.IsUpper(name[at]) && at > 0 && !char.IsUpper(name[at - 1]);
            words.Append(starts ? " " : "").Append(char.ToLowerInvariant(name[at]));
        }

        return words.ToString();
    }
}
