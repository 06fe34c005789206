using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain.Origins;
using Microsoft.AspNetCore.Mvc.Rendering;

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
}
