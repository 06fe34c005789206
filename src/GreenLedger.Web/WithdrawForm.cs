using System.ComponentModel.DataAnnotations;

namespace GreenLedger.Web;

/// <summary>Why a record no longer counts.</summary>
public sealed class WithdrawForm
{
    [Required(ErrorMessage = "Say why it is withdrawn.")]
    [Display(Name = "Reason")]
    public string? WithdrawnBecause { get; set; }
}
