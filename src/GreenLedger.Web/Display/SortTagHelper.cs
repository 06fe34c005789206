using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.AspNetCore.Mvc.ViewFeatures;
using Microsoft.AspNetCore.Razor.TagHelpers;

namespace GreenLedger.Web.Display;

/// <summary>
/// A column head that sorts: <c>&lt;th sort-by="price"&gt;Price&lt;/th&gt;</c>. The address carries
/// <c>sort=price</c>, then <c>sort=-price</c> for the other direction.
/// </summary>
[HtmlTargetElement("th", Attributes = "sort-by")]
public sealed class SortTagHelper : TagHelper
{
    [HtmlAttributeName("sort-by")]
    public string SortBy { get; set; } = "";

    [ViewContext]
    [HtmlAttributeNotBound]
    public ViewContext ViewContext { get; set; } = null!;

    public override async Task ProcessAsync(TagHelperContext context, TagHelperOutput output)
    {
        var request = ViewContext.HttpContext.Request;
        var now = request.Query["sort"].ToString();
        var next = now == SortBy ? "-" + SortBy : SortBy;
        var link = new TagBuilder("a");
        link.Attributes["href"] = ListAddress.With(request, ("sort", next), ("pageNumber", null));
        link.InnerHtml.AppendHtml(await output.GetChildContentAsync());
        if (now == SortBy || now == "-" + SortBy)
        {
            output.Attributes.SetAttribute("aria-sort", now == SortBy ? "ascending" : "descending");
            link.InnerHtml.Append(now == SortBy ? " ↑" : " ↓");
        }

        output.Attributes.SetAttribute("scope", "col");
        output.Content.SetHtmlContent(link);
    }
}
