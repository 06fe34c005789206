using GreenLedger.Data;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Origins;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Origins;

public sealed class NewProcessMethodModel(LedgerContext db, OriginActs acts) : FormPage
{
    [BindProperty]
    public ProcessMethodForm Input { get; set; } = new();

    /// <param name="word">A word from a list that no method has yet.</param>
    public void OnGet(string? word) =>
        Input = new ProcessMethodForm { Name = word?.ToLowerInvariant(), Synonyms = word, Family = ProcessFamily.Other };

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var method = new ProcessMethod(Input.Name ?? "", Input.Family);
        await acts.DescribeAsync(method, Input.Name, Input.Family, Input.Words, cancellationToken);
        db.Add(method);
        await db.SaveChangesAsync(cancellationToken);
        Say("The method is added.");
        return RedirectToPage("ProcessMethods");
    }
}
