using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Papers;

namespace GreenLedger.Web.Offers;

/// <summary>What a node is told to load: the parked file, from whom, as of when, and how to read it.</summary>
internal sealed record ListOrder(Guid FileId, string Supplier, DateOnly ReceivedOn, string Mapping)
{
    public string ToJson() => JsonSerializer.Serialize(this);

    public static ListOrder FromJson(string json) => JsonSerializer.Deserialize<ListOrder>(json)!;
}

/// <summary>Loads a long offer list for whoever ordered it.</summary>
internal sealed class ListWork(ListLoading loading) : IWork
{
    public const string Load = "load an offer list";

    public string Kind => Load;

    public async Task<string> DoAsync(Job job, Action<string, int, int> report, CancellationToken cancellationToken)
    {
        var order = ListOrder.FromJson(job.Order);
        report("Opening the list", 0, 0);
        var file = await loading.FindFileAsync(new Id<StoredFile>(order.FileId), cancellationToken);
        Rule.Require(file is not null, "The file is no longer here, since nothing followed it for a day: choose the list again.", "File");
        var list = await loading.OpenAsync(file, order.Supplier, OfferMapping.FromJson(order.Mapping), cancellationToken);
        var (outcome, stored) = await loading.StoreAsync(
            list, order.ReceivedOn, job.By, cancellationToken, (stage, done) => report(stage, Math.Min(done, list.Rows), list.Rows));
        return stored
            ? $"/Offers/List/{outcome.List.Id}"
            : $"/Offers/List/{await loading.FindLoadedAsync(list, cancellationToken)}?nothingNew=true";
    }
}
