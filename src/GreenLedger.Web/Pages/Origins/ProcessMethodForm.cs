using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

/// <summary>A process method as the buyer describes it.</summary>
public sealed class ProcessMethodForm
{
    public int Version { get; set; }

    [Display(Name = "Name")]
    [Required(ErrorMessage = "The name of the process method is missing: please fill it in.")]
    public string? Name { get; set; }

    public ProcessFamily Family { get; set; }

    [Display(Name = "Other words")]
    public string? Synonyms { get; set; }

    public static IReadOnlyList<SelectListItem> Families { get; } =
        [.. Enum.GetValues<ProcessFamily>().Select(family => new SelectListItem(family.Word(), family.ToString()))];

    public IEnumerable<string> Words => (Synonyms ?? "").Split(['\n', '\r', ','], StringSplitOptions.RemoveEmptyEntries);

    public static ProcessMethodForm Of(ProcessMethod method) => new()
    {
        Version = method.Version,
        Name = method.Name,
        Family = method.Family,
        Synonyms = string.Join(Environment.NewLine, method.Synonyms),
    };

    /// <summary>No word may mean two methods; lots that wait for one of these words get this method.</summary>
    public async Task TakeAsync(LedgerContext db, ProcessMethod method, CancellationToken cancellationToken)
    {
        method.Describe(Name ?? "", Family, Words);
        var words = method.Synonyms.Append(method.Name).Select(word => SearchText.Of(word)).ToHashSet(StringComparer.Ordinal);
        var others = await db.ProcessMethods.AsNoTracking().Where(other => other.Id != method.Id).ToListAsync(cancellationToken);
        var taken = others.SelectMany(other => other.Synonyms.Append(other.Name).Select(word => (Word: word, other.Name)))
            .FirstOrDefault(pair => words.Contains(SearchText.Of(pair.Word)));
        Rule.Require(taken.Word is null, $"\"{taken.Word}\" belongs to {taken.Name} already: one word names one method.", nameof(Synonyms));
        var waiting = await db.Lots.Where(lot => lot.ProcessMethodId == null && lot.ProcessAsWritten != null).ToListAsync(cancellationToken);
        foreach (var lot in waiting.Where(lot => words.Contains(SearchText.Of(lot.ProcessAsWritten))))
        {
            lot.Process(method.Id, lot.ProcessAsWritten);
        }
    }
}
