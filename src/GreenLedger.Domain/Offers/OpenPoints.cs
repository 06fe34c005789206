using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers;

/// <summary>What a due diligence is held against.</summary>
/// <param name="Lot">The lot.</param>
/// <param name="Producer">Who grew it; null where nobody said.</param>
/// <param name="Plots">Those that it is said to have grown on.</param>
/// <param name="IsLowRisk">Whether its country of production is of low risk.</param>
public sealed record DiligenceCase(Lot Lot, Producer? Producer, IReadOnlyList<Plot> Plots, bool IsLowRisk)
{
    /// <summary>What files show.</summary>
    public IReadOnlyCollection<EvidenceKind> Filed { get; init; } = [];

    /// <summary>Where countries lie.</summary>
    public CountryOutlines Outlines { get; init; } = CountryOutlines.None;

    /// <summary>Days and limits that the house goes by.</summary>
    public DiligenceHabits Habits { get; init; } = new();

    internal bool Lacks(EvidenceKind kind, string? text) => text is null && !Filed.Contains(kind);
}

/// <summary>What is open in a due diligence, in sentences (Regulation (EU) 2023/1115, Articles 9 to 11; handbook, trade 7.2 and 7.3).</summary>
/// <param name="Missing">What is asked for and not held.</param>
/// <param name="ToLookAt">What is held and doubtful: it may be right all the same.</param>
public sealed record OpenPoints(IReadOnlyList<string> Missing, IReadOnlyList<string> ToLookAt)
{
    public bool IsEmpty => Missing.Count == 0 && ToLookAt.Count == 0;

    internal static IReadOnlyList<string> MissingOf(DueDiligence held, DiligenceCase about) =>
        [.. Told(held.Role == DiligenceRole.Downstream ? OfDownstream(held, about.Lot) : OfOperator(held, about))];

    internal static IReadOnlyList<string> DoubtsOf(DueDiligence held, DiligenceCase about) => held.Role == DiligenceRole.Downstream
        ? [.. Told(
            (held.StatementReference is not null && held.VerificationNumber is null, "The supplier’s reference number stands without its verification number: ask for it, so that the statement can be looked up."),
            (held.ReferenceDoubt is not null, held.ReferenceDoubt ?? ""))]
        : [.. Told(InDoubt(held, about.Lot)), .. Told(OfQuantity(held, about)), .. OfPlots(about)];

    private static (bool IsOpen, string What)[] OfDownstream(DueDiligence held, Lot lot) =>
        [(held.StatementReference is null, "the reference number of the supplier’s statement"), (lot.SupplierId is null, "the supplier")];

    private static (bool IsOpen, string What)[] OfOperator(DueDiligence held, DiligenceCase about) =>
    [
        (about.Plots.Count == 0, "the plots that it was grown on, all of them"),
        (held.ProducedFrom is null && about.Lot.CropYear is null, "when it was produced: the harvest’s days, or the crop year"),
        (about.Lot.NetWeight is null || about.Lot.NetWeight == Weight.Zero, "the net weight"),
        (about.Lot.CountryCode is null, "the country of production"),
        (about.Lot.SupplierId is null, "the supplier"),
        (about.Lacks(EvidenceKind.Legality, held.Legality), "evidence that it was grown by the law of the country"),
        (about.Lacks(EvidenceKind.Deforestation, held.Deforestation), string.Create(CultureInfo.InvariantCulture, $"evidence that the land was not deforested after {about.Habits.NotDeforestedAfter:d MMMM yyyy}")),
        (!about.IsLowRisk && about.Lacks(EvidenceKind.Risk, held.Risk), "the judgement of risk and what lessened it"),
        (held.StatementReference is null, "the reference number of your statement"),
        (held.StatementReference is not null && held.VerificationNumber is null, "the verification number that came with the reference number"),
    ];

    private static (bool IsOpen, string What)[] InDoubt(DueDiligence held, Lot lot) =>
    [
        (held.ProducedFrom is null && lot.CropYear is not null, $"Only the crop year, {lot.CropYear}, says when it was produced: the days of the harvest say it better."),
        (held.ProducedFrom is not null && held.ProducedUntil is null, "The harvest has a first day and no last one."),
        (held.ReferenceDoubt is not null, held.ReferenceDoubt ?? ""),
    ];

    /// <summary>
    /// Whether so much can have grown there: against the harvest in green coffee (<see cref="CoffeeForms"/>), and by hectare against
    /// what the house finds likely (common practice, no source).
    /// </summary>
    private static (bool IsOpen, string What)[] OfQuantity(DueDiligence held, DiligenceCase about)
    {
        var (net, hectares) = (about.Lot.NetWeight ?? Weight.Zero, about.Plots.Sum(plot => plot.Hectares));
        var grown = held.Harvest is { } harvest ? held.HarvestForm.InGreen(harvest) : net;
        var perHectare = hectares > 0m ? net.Kilograms / hectares : 0m;
        return
        [
            (grown < net, string.Create(CultureInfo.InvariantCulture, $"The plots gave {held.Harvest?.Kilograms:#,0.###} kg of {held.HarvestForm.Word()}{(held.HarvestForm == CoffeeForm.Green ? " coffee" : "")}{(held.HarvestForm == CoffeeForm.Green ? "" : $", {grown.Kilograms.ToString("#,0.###", CultureInfo.InvariantCulture)} kg in green coffee,")} and the lot weighs {net.Kilograms:#,0.###} kg: ask where the rest grew.")),
            (perHectare > about.Habits.MostPerHectare, string.Create(CultureInfo.InvariantCulture, $"{net.Kilograms:#,0.###} kg from {hectares:#,0.####} ha are {perHectare:#,0} kg a hectare, more than the {about.Habits.MostPerHectare:#,0} kg that the house finds likely: ask whether a plot is missing or other coffee was added.")),
        ];
    }

    /// <summary>Of the plots together, and against the lot's country where its producer is of another one.</summary>
    private static IEnumerable<string> OfPlots(DiligenceCase about) => PlotDoubts.Of(about.Plots, about.Producer?.CountryCode, about.Outlines).Concat(
        about.Plots.Where(plot => about.Lot.CountryCode is { } country && plot.CountryCode != country && about.Producer?.CountryCode != country)
            .Select(plot => $"{plot.Name} is said to lie in {plot.CountryCode}, the lot is of {about.Lot.CountryCode}."));

    private static IEnumerable<string> Told(params (bool IsOpen, string What)[] points) => points.Where(one => one.IsOpen).Select(one => one.What);
}
