using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>
/// A sheet to add up. Marks go by the attributes' keys; a cup-counted attribute may be given as good cups or as points.
/// With <c>averages</c> true the marks are means over cuppers and need not stand on the form's steps.
/// </summary>
internal sealed record ScoreRequest(
    IReadOnlyDictionary<string, decimal> Marks,
    string? Form = null,
    int? Cups = null,
    IReadOnlyDictionary<string, int>? GoodCups = null,
    IReadOnlyDictionary<string, int>? DeductedCups = null,
    decimal? StatedTotal = null,
    bool Averages = false);

/// <summary>A total and its arithmetic; the difference is the stated total less the computed one.</summary>
internal sealed record ScoreReply(
    string Form,
    int Cups,
    IReadOnlyList<TotalLine> Attributes,
    decimal BeforeDeductions,
    IReadOnlyList<TotalLine> Deductions,
    decimal Unrounded,
    decimal Total,
    string? Band,
    decimal? Difference,
    IReadOnlyList<string> Doubts);

/// <summary>One score in long format.</summary>
internal sealed record PanelSheetRequest(string Sample, string Cupper, decimal Score);

/// <summary>
/// Sheets in long format, those of one sample and cupper being repeats; the errors expected default to the house's settings.
/// Weights say by cupper what the sheets count, above 0 and at most 1; a cupper who is not named counts 1.
/// </summary>
internal sealed record PanelRequest(
    IReadOnlyList<PanelSheetRequest> Sheets,
    decimal? Reproducibility = null,
    decimal? Repeatability = null,
    IReadOnlyDictionary<string, double>? Weights = null);

internal sealed record PanelSampleReply(
    string Sample,
    int Sheets,
    int Cuppers,
    double PlainMean,
    double Fitted,
    double StandardError,
    double Low,
    double High,
    HoldsFor HoldsFor,
    double TheseCuppersError,
    double AnyCupperError,
    int Part);

/// <summary>
/// A cupper's level in the fit, and the work beside the others over the samples that all tasted: null where nothing can be
/// said, repeatability and discrimination where nothing was tasted twice.
/// </summary>
internal sealed record PanelCupperReply(
    string Cupper,
    int Sheets,
    double Weight,
    double Effect,
    int Part,
    double? BiasAgainstOthers,
    double? Slope,
    double? Correlation,
    double? Repeatability,
    double? DiscriminationF,
    double? DiscriminationP);

internal sealed record PanelResidualReply(string Sample, string Cupper, double Score, double Fitted, double Residual);

/// <summary>Agreement over the samples that every cupper tasted; null where nothing can be said, and the sentence says why.</summary>
internal sealed record AgreementReply(
    int Samples,
    int Cuppers,
    string Sentence,
    double? Icc11,
    double? Icc21,
    double? Icc31,
    double? Icc1k,
    double? Icc2k,
    double? Icc3k,
    double? KendallW,
    double? KendallWWithoutTies,
    double? FriedmanChiSquared,
    int? FriedmanDegreesOfFreedom,
    double? FriedmanP,
    double? SampleF,
    double? SampleP,
    double? InteractionF,
    double? InteractionP,
    double? ErrorVariance,
    double? InteractionVariance,
    double? CupperVariance);

/// <summary>A panel's fit and what it shows; pairwise is null for more than 60 samples, repeatability where nothing was tasted twice.</summary>
internal sealed record PanelReply(
    IReadOnlyList<PanelSampleReply> Samples,
    IReadOnlyList<PanelCupperReply> Cuppers,
    IReadOnlyList<PanelResidualReply> Residuals,
    double? ResidualDeviation,
    double ResidualSumOfSquares,
    int DegreesOfFreedom,
    double? SampleF,
    ErrorSource ErrorFrom,
    int Parts,
    AgreementReply Agreement,
    Repeatability? Repeatability,
    PairwiseReply? Pairwise,
    IReadOnlyList<string> Notes);

/// <summary>Calculators that store nothing.</summary>
internal static class CuppingCalculators
{
    [StoresNothing]
    public static async Task<Ok<ScoreReply>> Score(ScoreRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var form = await CuppingApi.FindFormAsync(db, request.Form, cancellationToken);
        var cups = request.Cups ?? FormRules.UsualCups;
        SheetTotal total;
        string[] doubts = [];
        if (request.Averages)
        {
            total = SheetInput.Averages(form.Rules, request.Marks, request.DeductedCups);
        }
        else
        {
            var marks = SheetInput.Read(form.Rules, request.Marks, request.GoodCups, request.DeductedCups, cups);
            total = SheetTotal.Of(form.Rules, marks, cups);
            doubts = [.. SheetTotal.Doubts(form.Rules, marks, cups)];
        }

        return TypedResults.Ok(new ScoreReply(
            form.Code,
            cups,
            total.Attributes,
            total.BeforeDeductions,
            total.Deductions,
            total.Unrounded,
            total.Total,
            form.Rules.Bands.Count == 0 ? null : form.Rules.Band(total.Total)?.Name ?? "below specialty",
            request.StatedTotal - total.Total,
            doubts));
    }

    [StoresNothing]
    public static async Task<Ok<PanelReply>> PanelAsync(PanelRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        Rule.Require(request.Sheets is { Count: > 0 }, "Send at least one sheet.", nameof(request.Sheets));
        Rule.Require(request.Sheets.Count <= 20_000, "At most 20,000 sheets at once.", nameof(request.Sheets));
        Rule.Require(request.Sheets.All(sheet => !string.IsNullOrWhiteSpace(sheet.Sample) && !string.IsNullOrWhiteSpace(sheet.Cupper)), "Each sheet names its sample and its cupper.", nameof(request.Sheets));
        Rule.Require(request.Sheets.All(sheet => sheet.Score is >= -100m and <= 100m), "A score lies between −100 and 100.", nameof(request.Sheets));
        var house = await Errors.ExpectedAsync(db, cancellationToken);
        var expected = new ExpectedErrors((double?)request.Reproducibility ?? house.Reproducibility, (double?)request.Repeatability ?? house.Repeatability);
        Rule.Require(expected.Reproducibility is > 0 and <= 10 && expected.Repeatability is > 0 and <= 10, "Reproducibility and repeatability lie above 0 and at most 10 points.", nameof(request.Reproducibility));
        return TypedResults.Ok(Reply(request.Sheets, request.Weights, expected));
    }

    private static PanelReply Reply(IReadOnlyList<PanelSheetRequest> sheets, IReadOnlyDictionary<string, double>? named, ExpectedErrors expected)
    {
        var samples = sheets.Select(sheet => sheet.Sample.Trim()).Distinct().ToList();
        var cuppers = sheets.Select(sheet => sheet.Cupper.Trim()).Distinct().ToList();
        var place = samples.Select((name, index) => (name, index)).ToDictionary(pair => pair.name, pair => pair.index);
        var seat = cuppers.Select((name, index) => (name, index)).ToDictionary(pair => pair.name, pair => pair.index);
        var scores = sheets.Select(sheet => new PanelScore(place[sheet.Sample.Trim()], seat[sheet.Cupper.Trim()], (double)sheet.Score)).ToList();
        var weights = Weights(named, cuppers);
        var fit = AdditiveFit.Of(SessionScores.CellsOf(scores), samples.Count, cuppers.Count, weights);
        var errors = PanelErrors.Of(fit, expected);
        var ofSample = scores.ToLookup(score => score.Sample);
        var work = CupperPerformance.Of(scores).ToDictionary(one => one.Cupper);
        return new PanelReply(
            [.. samples.Select((name, index) => Sample(name, index, [.. ofSample[index]], fit, errors))],
            [.. cuppers.Select((name, index) => Cupper(name, index, scores, weights[index], fit, work.GetValueOrDefault(index)))],
            [.. scores.Select(score => new PanelResidualReply(samples[score.Sample], cuppers[score.Cupper], score.Points, fit.Fitted(score), score.Points - fit.Fitted(score)))],
            Finite(fit.ResidualDeviation),
            fit.ResidualSumOfSquares,
            fit.DegreesOfFreedom,
            fit.Parts == 1 ? Finite(fit.SampleF()) : null,
            errors.From,
            fit.Parts,
            Agreed(Agreement.Of(scores)),
            Repeatability.Of(scores),
            PairwiseReply.Of(fit, errors, samples),
            [.. PanelNotes.Of(fit, errors, expected)]);
    }

    private static List<double> Weights(IReadOnlyDictionary<string, double>? named, List<string> cuppers)
    {
        var unknown = named?.Keys.FirstOrDefault(name => !cuppers.Contains(name.Trim()));
        Rule.Require(unknown is null, $"A weight is given for {unknown}, who has no sheet.", nameof(PanelRequest.Weights));
        Rule.Require(named is null || named.Values.All(weight => weight is > 0 and <= 1), "A weight lies above 0 and is at most 1.", nameof(PanelRequest.Weights));
        var weights = named?.ToDictionary(pair => pair.Key.Trim(), pair => pair.Value) ?? [];
        return cuppers.ConvertAll(name => weights.GetValueOrDefault(name, 1));
    }

    private static PanelCupperReply Cupper(string name, int index, List<PanelScore> scores, double weight, AdditiveFit fit, CupperPerformance? work) => new(
        name,
        scores.Count(score => score.Cupper == index),
        weight,
        fit.CupperEffects[index],
        fit.PartOfCupper(index) + 1,
        work?.Bias,
        Finite(work?.Slope),
        Finite(work?.Correlation),
        work?.Repeatability,
        Finite(work?.Discrimination?.F),
        Finite(work?.Discrimination?.P));

    private static PanelSampleReply Sample(string name, int index, List<PanelScore> own, AdditiveFit fit, PanelErrors errors)
    {
        var estimate = errors.Estimate(index);
        return new PanelSampleReply(
            name,
            own.Count,
            own.Select(score => score.Cupper).Distinct().Count(),
            own.Average(score => score.Points),
            fit.Adjusted[index],
            estimate.StandardError,
            estimate.Low,
            estimate.High,
            estimate.HoldsFor,
            errors.TheseCuppers(index),
            errors.AnyCupper(index),
            fit.PartOf(index) + 1);
    }

    internal static AgreementReply Agreed(Agreement agreement) => new(
        agreement.Samples,
        agreement.Cuppers,
        agreement.Sentence,
        Finite(agreement.Correlation?.OneRandom),
        Finite(agreement.Correlation?.TwoRandom),
        Finite(agreement.Correlation?.Fixed),
        Finite(agreement.Correlation?.OneRandomMean),
        Finite(agreement.Correlation?.TwoRandomMean),
        Finite(agreement.Correlation?.FixedMean),
        Finite(agreement.Ranks?.W),
        Finite(agreement.Ranks?.WithoutTies),
        Finite(agreement.Ranks?.ChiSquared),
        agreement.Ranks?.DegreesOfFreedom,
        Finite(agreement.Ranks?.P),
        Finite(agreement.TwoWay?.SampleF),
        Finite(agreement.TwoWay?.SampleP),
        Finite(agreement.TwoWay?.InteractionF),
        Finite(agreement.TwoWay?.InteractionP),
        Finite(agreement.TwoWay?.ErrorVariance),
        Finite(agreement.TwoWay?.InteractionVariance),
        Finite(agreement.TwoWay?.CupperVariance));

    internal static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;
}
