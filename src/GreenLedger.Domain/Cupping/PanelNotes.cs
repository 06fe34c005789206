using System.Globalization;

namespace GreenLedger.Domain.Cupping;

/// <summary>Says in sentences how a panel's figures came about and what they do not say.</summary>
public static class PanelNotes
{
    public static IEnumerable<string> Of(PanelResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var expected = result is { Reproducibility: { } between, Repeatability: { } one } ? ExpectedErrors.Of(between, one) : null;
        var notes = Of(result.Cuppers.Count, result.Parts, result.ErrorFrom, result.DegreesOfFreedom, (double?)result.ResidualDeviation?.Points, expected);
        return result.WeightRule is { } rule ? notes.Append(rule) : notes;
    }

    public static IEnumerable<string> Of(AdditiveFit fit, PanelErrors errors, ExpectedErrors expected)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(errors);
        return Of(fit.CupperEffects.Length, fit.Parts, errors.From, fit.DegreesOfFreedom, fit.DegreesOfFreedom > 0 ? fit.ResidualDeviation : null, expected);
    }

    private static IEnumerable<string> Of(int cuppers, int parts, ErrorSource from, int freedom, double? residual, ExpectedErrors? expected)
    {
        yield return cuppers == 1
            ? "One cupper: the result is the sheet."
            : "Score = sample + cupper + error, fitted to all sheets at once by least squares; the fitted score is the sample's mean with each cupper's own level taken out.";
        yield return from == ErrorSource.OwnResidual
            ? string.Create(CultureInfo.InvariantCulture, $"The error comes from these sheets: one sheet lies {residual:0.00} points around the fit, with {freedom} degrees of freedom. The 95 % interval holds for these cuppers; for any cupper it is wider, as shown apart.")
            : $"{(cuppers == 1 ? "One cupper cannot show how far others would score from this" : "Too few sheets to estimate the error")}: the house's reproducibility between cuppers{Then(expected?.Reproducibility)} is used, and the 95 % interval holds for any cupper. The house's repeatability of one cupper{Then(expected?.Repeatability)} gives the error for these cuppers, shown apart.";
        if (parts > 1)
        {
            yield return $"The table falls into {parts} parts that no cupper connects: scores of different parts cannot be compared. Cup one sample of each part together to connect them.";
        }
    }

    /// <summary>Results of before the ledger kept the figure are computed by what the house expected then.</summary>
    private static string Then(double? points) =>
        points is { } known ? string.Create(CultureInfo.InvariantCulture, $" ({known:0.00} points)") : ", as it was set then,";
}
