using GreenLedger.Domain.Papers;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Papers;

/// <summary>Ways of the pages that put something on a record and lead back to where the person came from.</summary>
internal static class PapersForm
{
    /// <summary>Back to the page that the person came from, or to the first page.</summary>
    public static IActionResult Back(IUrlHelper url, string? returnUrl) =>
        new LocalRedirectResult(url.IsLocalUrl(returnUrl) ? returnUrl! : "/");

    /// <summary>Why nothing may be put on the record: it is not there for this person, or only to be read; null where it may.</summary>
    public static async Task<IActionResult?> RefusalAsync(this PapersReader papers, PapersOn on, CancellationToken cancellationToken) =>
        await papers.FindNameAsync(on, cancellationToken) is null ? new NotFoundResult()
        : await papers.MayWriteAsync(on) ? null
        : new ForbidResult();

    public static string On(PapersOf about, string name) => $"On the {about.Word()} {name}";
}
