using GreenLedger.Domain.Grading;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>A grade with what it was counted by: the model of the partial <c>_Found</c>.</summary>
public sealed record FoundGrade(GreenGrade Grade, GradingStandards Standards);
