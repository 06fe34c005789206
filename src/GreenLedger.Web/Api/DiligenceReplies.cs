using GreenLedger.Data.Offers;
using GreenLedger.Data.Trace;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Web.Api;

/// <summary>What is said about where a lot grew.</summary>
/// <param name="Version">As it was read; 0 where nothing was held.</param>
/// <param name="Plots">All plots of its producer that it grew on.</param>
/// <param name="HarvestKg">What those plots gave in the days of the harvest, as it was weighed there.</param>
/// <param name="HarvestForm">Green, Parchment or DriedCherry.</param>
internal sealed record DiligenceRequest(
    int Version,
    DiligenceRole Role,
    DateOnly? ProducedFrom,
    DateOnly? ProducedUntil,
    DateOnly? PlacedOn,
    string? Legality,
    string? Deforestation,
    string? Risk,
    string? StatementReference,
    string? VerificationNumber,
    IReadOnlyList<Guid>? Plots,
    decimal? HarvestKg = null,
    CoffeeForm HarvestForm = CoffeeForm.Green)
{
    public DiligenceFacts Facts() => new(Role, ProducedFrom, ProducedUntil, Legality, Deforestation, Risk, StatementReference, VerificationNumber, PlacedOn)
    {
        Harvest = HarvestKg is { } kilograms ? Weight.FromKilograms(kilograms) : null,
        HarvestForm = HarvestForm,
    };

    public IReadOnlyCollection<Id<Plot>> PlotIds() => [.. (Plots ?? []).Select(id => new Id<Plot>(id))];
}

/// <summary>A file that is evidence.</summary>
internal sealed record EvidenceReply(Guid AttachmentId, string Kind, string FileName);

/// <summary>What a lot's due diligence holds and lacks; not legal advice.</summary>
/// <param name="Files">Null where an open cupping session keeps the lot's papers from you.</param>
/// <param name="KeptUntil">The last day on which its files are kept; null while the coffee is not placed on the market.</param>
internal sealed record DiligenceReply(
    Guid LotId,
    string LotRef,
    int Version,
    string Role,
    DateOnly? ProducedFrom,
    DateOnly? ProducedUntil,
    DateOnly? PlacedOn,
    string? Legality,
    string? Deforestation,
    string? Risk,
    string? StatementReference,
    string? VerificationNumber,
    IReadOnlyList<Guid> Plots,
    IReadOnlyList<EvidenceReply>? Files,
    decimal? HarvestKg,
    string HarvestForm,
    decimal? HarvestInGreenKg,
    DateOnly? KeptUntil,
    DateOnly AppliesFrom,
    IReadOnlyList<string> Missing,
    IReadOnlyList<string> ToLookAt)
{
    public static DiligenceReply Of(DiligenceView view, bool mayReadPapers)
    {
        var (held, open) = (view.Held, view.Open);
        return new DiligenceReply(
            view.Lot.Id.Value, view.Lot.Ref, held.Version, held.Role.ToString(), held.ProducedFrom, held.ProducedUntil, held.PlacedOn, held.Legality, held.Deforestation, held.Risk, held.StatementReference, held.VerificationNumber,
            [.. view.Grown.Select(plot => plot.Id.Value)],
            mayReadPapers ? [.. Enum.GetValues<EvidenceKind>().SelectMany(kind => view.FilesOf(kind).Select(file => new EvidenceReply(file.Id.Value, kind.ToString(), file.FileName)))] : null,
            held.Harvest?.Kilograms, held.HarvestForm.ToString(), held.Harvest is { } harvest ? held.HarvestForm.InGreen(harvest).Kilograms : null, view.KeptUntil, view.Habits.AppliesFrom, open.Missing, open.ToLookAt);
    }
}

/// <summary>A bought lot with what its due diligence lacks.</summary>
internal sealed record BoughtDiligenceReply(
    Guid LotId, string LotRef, string LotName, string? Country, decimal ContractedKg, decimal AfloatKg, decimal InStockKg, DateOnly? Expected, string Role, int Plots, string? StatementReference, IReadOnlyList<string> Missing, IReadOnlyList<string> ToLookAt)
{
    public static BoughtDiligenceReply Of(BoughtDiligence row) => new(
        row.View.Lot.Id.Value, row.View.Lot.Ref, row.View.Lot.Name, row.View.Lot.CountryCode, row.Contracted.Kilograms, row.Afloat.Kilograms, row.InStock.Kilograms, row.Expected,
        row.View.Held.Role.ToString(), row.View.Grown.Count, row.View.Held.StatementReference, row.Missing, row.Open.ToLookAt);
}

/// <summary>Days and limits of due diligence as the house states them.</summary>
/// <param name="Size">General or Small; null where nobody said, and the earlier day counts.</param>
internal sealed record DiligenceHabitsBody(int Version, FirmSize? Size, DateOnly AppliesGenerally, DateOnly AppliesToSmall, DateOnly NotDeforestedAfter, int KeepYears, int ExportMegabytes, string? Source, int MostPerHectare = DiligenceHabits.UsualMostPerHectare)
{
    public static DiligenceHabitsBody Of(DiligenceHabits habits) => new(
        habits.Version, habits.Size, habits.AppliesGenerally, habits.AppliesToSmall, habits.NotDeforestedAfter, habits.KeepYears, habits.ExportMegabytes, habits.Source, habits.MostPerHectare);

    public DiligenceTerms Terms() => new(Size, AppliesGenerally, AppliesToSmall, NotDeforestedAfter, KeepYears, ExportMegabytes, Source, MostPerHectare);
}
