using GreenLedger.Domain.Cupping;

namespace GreenLedger.Web.Api;

internal sealed record ReviseFormRequest(FormRules? Rules, string? Reason);

internal sealed record ReviseDescriptiveRequest(DescriptiveRules? Rules, string? Reason);

/// <summary>A form of intensities from 0 upwards and of lists of words, in one revision; the reason is null as delivered.</summary>
internal sealed record DescriptiveFormReply(Guid Id, string Name, string Edition, int Revision, DescriptiveRules Rules, string? Reason)
{
    public static DescriptiveFormReply Of(DescriptiveForm form) => new(form.Id.Value, form.Name, form.Edition, form.Revision, form.Rules, form.Reason);
}

/// <summary>A word; the version is that of the word to be changed, as it was read.</summary>
internal sealed record DescriptorRequest(string? Word, string? Family, bool IsRetired = false, int? Version = null);

internal sealed record RenameFamilyRequest(string? From, string? To);

/// <summary>A word in its family; retired, it is no longer proposed while cuppers type.</summary>
internal sealed record DescriptorReply(Guid Id, int Version, string Word, string Family, bool IsRetired)
{
    public static DescriptorReply Of(Descriptor word) => new(word.Id.Value, word.Version, word.Word, word.Family, word.IsRetired);
}

/// <summary>What the house does at every table: the cup in mL, the dose in g a litre, the repeatability to keep in points.</summary>
internal sealed record HabitsRequest(
    int CupMilliliters, decimal DoseGramsPerLiter, string? Water, int MostInFlight, bool DescriptiveForm = false, decimal? StatedRepeatability = null, int? Version = null);

/// <summary>Seconds after the pour by the key of the step; steps that are left out keep their time.</summary>
internal sealed record RetimeRequest(IReadOnlyDictionary<string, int>? AfterSeconds, string? Reason);

/// <summary>The steps of a tasting; without seconds a step comes before the pour.</summary>
internal sealed record TastingProtocolReply(Guid Id, string Name, int Revision, IReadOnlyList<TastingStepReply> Steps, string? Reason)
{
    public static TastingProtocolReply Of(TastingProtocol protocol) => new(
        protocol.Id.Value, protocol.Name, protocol.Revision, [.. protocol.Steps.Select(step => new TastingStepReply(step.Key, step.Name, step.AfterSeconds))], protocol.Reason);
}

internal sealed record TastingStepReply(string Key, string Name, int? AfterSeconds);
