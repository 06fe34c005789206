using Microsoft.AspNetCore.Html;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.AspNetCore.Mvc.TagHelpers;
using Microsoft.AspNetCore.Mvc.ViewFeatures;
using Microsoft.AspNetCore.Razor.TagHelpers;

namespace GreenLedger.Web.Display;

/// <summary>
/// A whole field: label above, hint, the control inside, error beside it.
/// <c>&lt;field for="Input.Name" hint="As on the contract."&gt;&lt;input …&gt;&lt;/field&gt;</c>; without a control
/// inside it makes the usual input for the type.
/// </summary>
[HtmlTargetElement("field", Attributes = "for")]
public sealed class FieldTagHelper(IHtmlGenerator generator) : TagHelper
{
    public ModelExpression For { get; set; } = null!;

    public string? Hint { get; set; }

    /// <summary>The label, if not the form's display name.</summary>
    public string? Label { get; set; }

    [ViewContext]
    [HtmlAttributeNotBound]
    public ViewContext ViewContext { get; set; } = null!;

    public override async Task ProcessAsync(TagHelperContext context, TagHelperOutput output)
    {
        var id = TagBuilder.CreateSanitizedId(ViewContext.ViewData.TemplateInfo.GetFullHtmlFieldName(For.Name), "_");
        context.Items[typeof(FieldTagHelper)] = Hint is null ? null! : id + "_hint";
        var control = await output.GetChildContentAsync();
        output.TagName = "div";
        output.TagMode = TagMode.StartTagAndEndTag;
        output.Attributes.SetAttribute("class", "field");
        output.Content.AppendHtml(generator.GenerateLabel(
            ViewContext, For.ModelExplorer, For.Name, Label, new { @class = "form-label" }));
        if (Hint is not null)
        {
            var hint = new TagBuilder("span") { Attributes = { ["id"] = id + "_hint", ["class"] = "field-hint" } };
            hint.InnerHtml.Append(Hint);
            output.Content.AppendHtml(hint);
        }

        output.Content.AppendHtml(control.IsEmptyOrWhiteSpace ? await UsualInputAsync(context) : control);
        output.Content.AppendHtml(generator.GenerateValidationMessage(
            ViewContext, For.ModelExplorer, For.Name, null, "span", new { id = id + "_error" }));
    }

    private async Task<IHtmlContent> UsualInputAsync(TagHelperContext context)
    {
        var input = new InputTagHelper(generator) { For = For, ViewContext = ViewContext };
        var attributes = new TagHelperAttributeList { { "class", "form-control" } };
        var output = new TagHelperOutput(
            "input", attributes, (_, _) => Task.FromResult<TagHelperContent>(new DefaultTagHelperContent()))
        {
            TagMode = TagMode.SelfClosing,
        };
        input.Init(context);
        await input.ProcessAsync(context, output);
        new DescribedControlTagHelper { ViewContext = ViewContext, For = For }.Process(context, output);
        return output;
    }
}
