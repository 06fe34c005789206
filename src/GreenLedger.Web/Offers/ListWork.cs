using System.Text.Json;
using System.Text.Json.Serialization;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Papers;

namespace GreenLedger.Web.Offers;

/// <summary>What a node is told to load: the parked file, from whom, as of when, and how to read it.</summary>
internal sealed record ListOrder(Guid FileId, string Supplier, DateOnly ReceivedOn, string Mapping)
{
    [JsonIgnore]
    public OfferMapping Columns => OfferMapping.FromJson(Mapping);

    public string ToJson() => JsonSerializer.Serialize(this);

    public static ListOrder FromJson(string json) => JsonSerializer.Deserialize<ListOrder>(json)!;
}

/// <summary>Loads a long offer list for whoever ordered it.</summary>
internal sealed class ListWork(ListLoading loading) : IWork
{
    public const string Load = "load an offer list";

    public string Kind => Load;

    public async Task<WorkDone> DoAsync(Job job, Action<string, int, int> report, CancellationToken cancellationToken)
    {
        var order = ListOrder.FromJson(job.Order);
        var list = await OpenAsync(loading, order, report, cancellationToken);
        var (outcome, stored) = await loading.StoreAsync(
            list, order.ReceivedOn, job.By, cancellationToken, (stage, done) => report(stage, Math.Min(done, list.Rows), list.Rows));
        return new WorkDone(stored
            ? $"/Offers/List/{outcome.List.Id}"
            : $"/Offers/List/{await loading.FindLoadedAsync(list, cancellationToken)}?nothingNew=true");
    }

    public static async Task<OpenedList> OpenAsync(ListLoading loading, ListOrder order, Action<string, int, int> report, CancellationToken cancellationToken)
    {
        report("Opening the list", 0, 0);
        var file = await loading.FindFileAsync(new Id<StoredFile>(order.FileId), cancellationToken);
        Rule.Require(file is not null, "The file is no longer here, since nothing followed it for a day: choose the list again.", "File");
        return await loading.OpenAsync(file, order.Supplier, order.Columns, cancellationToken);
    }
}

/// <summary>Looks at what a long offer list comes to for whoever ordered it; nothing of it is stored.</summary>
internal sealed class PreviewWork(ListLoading loading) : IWork
{
    public const string Preview = "preview an offer list";

    public string Kind => Preview;

    public async Task<WorkDone> DoAsync(Job job, Action<string, int, int> report, CancellationToken cancellationToken)
    {
        var order = ListOrder.FromJson(job.Order);
        var list = await ListWork.OpenAsync(loading, order, report, cancellationToken);
        var outcome = await loading.PreviewAsync(
            list, order.ReceivedOn, job.By, cancellationToken, (stage, done) => report(stage, Math.Min(done, list.Rows), list.Rows));
        return new WorkDone($"/Offers/Columns/{list.File.Id}?preview={job.Id}#outcome", ListPreview.Of(outcome).ToJson());
    }
}
