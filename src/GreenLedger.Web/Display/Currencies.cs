using GreenLedger.Domain.Measures;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace GreenLedger.Web.Display;

/// <summary>The currencies for a choice in a form, those of the trade first.</summary>
public static class Currencies
{
    private static readonly string[] First = ["EUR", "USD", "GBP", "CHF", "JPY"];

    public static IReadOnlyList<SelectListItem> Choices { get; } =
        [.. First.Concat(Currency.Codes.Except(First)).Select(code => new SelectListItem(code, code))];
}
