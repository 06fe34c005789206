using GreenLedger.Domain.Papers;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Papers;

/// <summary>Ways of the pages that put something on a record and lead back to where the person came from.</summary>
internal static class PapersForm
{
    /// <summary>Back to the page that the person came from, or to the first page.</summary>
    public static IActionResult Back(IUrlHelper url, string? returnUrl) =>
        new LocalRedirectResult(url.IsLocalUrl(returnUrl) ? returnUrl! : "/");

    public static string On(PapersOf about, string name) => $"On the {about.Word()} {name}";
}
