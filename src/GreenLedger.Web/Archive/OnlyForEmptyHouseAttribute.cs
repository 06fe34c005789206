using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;

namespace GreenLedger.Web.Archive;

/// <summary>
/// A page that is there while nobody works in the house yet. It is asked before anything that was sent is read: an archive may be
/// large, and afterwards nobody who is not signed in may send one.
/// </summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class OnlyForEmptyHouseAttribute : Attribute, IAsyncAuthorizationFilter, IOrderedFilter
{
    public int Order => int.MinValue;

    public async Task OnAuthorizationAsync(AuthorizationFilterContext context)
    {
        var house = context.HttpContext.RequestServices.GetRequiredService<ReadingBack>();
        if (!await house.IsEmptyAsync(context.HttpContext.RequestAborted))
        {
            context.Result = new RedirectToPageResult("/Entrance/SignIn");
        }
    }
}
