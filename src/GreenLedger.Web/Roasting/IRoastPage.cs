using GreenLedger.Domain.Roasting;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace GreenLedger.Web.Roasting;

/// <summary>A page with the form of a roast on it.</summary>
public interface IRoastPage
{
    RoastForm Input { get; }

    /// <summary>The windows that the roast is held against, for the hints.</summary>
    RoastWindows Windows { get; }

    IReadOnlyList<SelectListItem> Roasters { get; }

    /// <summary>False for a correction, which moves neither the sample nor the end of the roast.</summary>
    bool IsNew { get; }
}
