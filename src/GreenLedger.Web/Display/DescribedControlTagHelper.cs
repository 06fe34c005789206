using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.AspNetCore.Mvc.ViewFeatures;
using Microsoft.AspNetCore.Razor.TagHelpers;

namespace GreenLedger.Web.Display;

/// <summary>Ties every bound control to its hint and its error for those who hear the page.</summary>
[HtmlTargetElement("input", Attributes = "asp-for")]
[HtmlTargetElement("select", Attributes = "asp-for")]
[HtmlTargetElement("textarea", Attributes = "asp-for")]
public sealed class DescribedControlTagHelper : TagHelper
{
    [HtmlAttributeName("asp-for")]
    public ModelExpression For { get; set; } = null!;

    [ViewContext]
    [HtmlAttributeNotBound]
    public ViewContext ViewContext { get; set; } = null!;

    /// <summary>After the framework's own helpers have named the control.</summary>
    public override int Order => 1000;

    public override void Process(TagHelperContext context, TagHelperOutput output)
    {
        var ids = new List<string>();
        if (context.Items.TryGetValue(typeof(FieldTagHelper), out var hint) && hint is string hintId)
        {
            ids.Add(hintId);
        }

        var name = ViewContext.ViewData.TemplateInfo.GetFullHtmlFieldName(For.Name);
        if (ViewContext.ViewData.ModelState.GetFieldValidationState(name) == ModelValidationState.Invalid)
        {
            ids.Add(TagBuilder.CreateSanitizedId(name, "_") + "_error");
            output.Attributes.SetAttribute("aria-invalid", "true");
        }

        if (ids.Count > 0 && !output.Attributes.ContainsName("aria-describedby"))
        {
            output.Attributes.SetAttribute("aria-describedby", string.Join(' ', ids));
        }
    }
}
