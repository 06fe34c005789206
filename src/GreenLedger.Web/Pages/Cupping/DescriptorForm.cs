using System.ComponentModel.DataAnnotations;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>A word of the house's list, as it is typed.</summary>
public sealed class DescriptorForm
{
    public int Version { get; set; }

    [Required(ErrorMessage = "Type the word.")]
    public string? Word { get; set; }

    [Required(ErrorMessage = "Name the family that it belongs to.")]
    public string? Family { get; set; }

    [Display(Name = "While cuppers type")]
    public bool IsRetired { get; set; }
}
