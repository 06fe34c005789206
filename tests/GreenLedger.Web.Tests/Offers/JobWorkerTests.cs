using GreenLedger.Data.Papers;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Offers;

public sealed class JobWorkerTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_list_left_to_the_nodes_is_stored_and_leads_to_its_page()
    {
        await using var nodes = await OpenAsync();
        var job = await nodes.OrderAsync(40);

        Assert.True(await nodes.Node().DoNextAsync(Cancel));

        var done = await nodes.JobAsync(job);
        var list = await nodes.FromLedgerAsync(db => db.OfferLists.SingleAsync(Cancel));
        Assert.Equal((JobState.Done, $"/Offers/List/{list.Id}"), (done.State, done.Outcome));
        Assert.Equal((40, 40), (list.Accepted, await nodes.FromLedgerAsync(db => db.Offers.CountAsync(Cancel))));
        Assert.Equal(nodes.Buyer.Id, (await nodes.FromLedgerAsync(db => db.Changes.SingleAsync(change => change.RecordKind == nameof(OfferList), Cancel))).By);
        Assert.False(await nodes.Node().DoNextAsync(Cancel));
    }

    [Fact]
    public async Task Of_two_nodes_only_one_takes_a_job()
    {
        await using var nodes = await OpenAsync();
        var job = await nodes.OrderAsync(40);

        var took = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => nodes.Node().DoNextAsync(Cancel), Cancel)));

        Assert.Equal(1, took.Count(one => one));
        Assert.Equal((JobState.Done, 1), ((await nodes.JobAsync(job)).State, (await nodes.JobAsync(job)).Tries));
        Assert.Equal(1, await nodes.FromLedgerAsync(db => db.OfferLists.CountAsync(Cancel)));
    }

    [Fact]
    public async Task A_node_that_falls_away_while_it_stores_leaves_nothing_and_another_begins_anew()
    {
        await using var nodes = await OpenAsync();
        var job = await nodes.OrderAsync(40);
        await TakenByANodeThatDiesAsync(nodes, job);

        var tooEarly = await nodes.Node().DoNextAsync(Cancel);
        var left = await nodes.FromLedgerAsync(db => db.Offers.CountAsync(Cancel));
        nodes.Clock.Now += Job.Silence + TimeSpan.FromSeconds(1);
        var taken = await nodes.Node().DoNextAsync(Cancel);

        Assert.False(tooEarly);
        Assert.Equal(0, left);
        Assert.True(taken);
        Assert.Equal((JobState.Done, 2), ((await nodes.JobAsync(job)).State, (await nodes.JobAsync(job)).Tries));
        Assert.Equal(40, await nodes.FromLedgerAsync(db => db.Offers.CountAsync(Cancel)));
    }

    [Fact]
    public async Task A_node_that_falls_away_after_it_stored_does_not_make_the_list_twice()
    {
        await using var nodes = await OpenAsync();
        var first = await nodes.OrderAsync(40);
        await nodes.Node().DoNextAsync(Cancel);
        await nodes.FromLedgerAsync(db => db.Jobs.Where(job => job.Id == first).ExecuteUpdateAsync(
            set => set.SetProperty(job => job.State, JobState.Running).SetProperty(job => job.Outcome, (string?)null).SetProperty(job => job.EndedAt, (DateTimeOffset?)null), Cancel));
        nodes.Clock.Now += Job.Silence + TimeSpan.FromSeconds(1);

        Assert.True(await nodes.Node().DoNextAsync(Cancel));

        var list = await nodes.FromLedgerAsync(db => db.OfferLists.SingleAsync(Cancel));
        Assert.Equal($"/Offers/List/{list.Id}?nothingNew=true", (await nodes.JobAsync(first)).Outcome);
        Assert.Equal(40, await nodes.FromLedgerAsync(db => db.Offers.CountAsync(Cancel)));
    }

    [Fact]
    public async Task A_job_that_never_ends_well_is_given_up_after_three_tries()
    {
        await using var nodes = await OpenAsync();
        var job = await nodes.OrderAsync(40);
        for (var tries = 0; tries < Job.MostTries; tries++)
        {
            await TakenByANodeThatDiesAsync(nodes, job);
            nodes.Clock.Now += Job.Silence + TimeSpan.FromSeconds(1);
        }

        await nodes.Node().DoNextAsync(Cancel);

        var ended = await nodes.JobAsync(job);
        Assert.Equal(JobState.Failed, ended.State);
        Assert.Contains("smaller list", ended.Outcome, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_was_swept_meanwhile_ends_the_job_with_a_sentence()
    {
        await using var nodes = await OpenAsync();
        var job = await nodes.OrderAsync(40);
        await nodes.FromLedgerAsync(db => db.StoredFiles.ExecuteDeleteAsync(Cancel));

        Assert.True(await nodes.Node().DoNextAsync(Cancel));

        var ended = await nodes.JobAsync(job);
        Assert.Equal(JobState.Failed, ended.State);
        Assert.Contains("choose the list again", ended.Outcome, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_node_that_is_stopped_gives_the_job_back_and_stores_nothing()
    {
        await using var nodes = await OpenAsync();
        var job = await nodes.OrderAsync(4000);
        using var stop = new CancellationTokenSource();
        var node = nodes.Node();

        var work = Task.Run(() => node.DoNextAsync(stop.Token), Cancel);
        while (nodes.Progress.Find(job) is null && !work.IsCompleted)
        {
            await Task.Yield();
        }

        await stop.CancelAsync();
        await work;

        var given = await nodes.JobAsync(job);
        Assert.Equal((JobState.Waiting, 0, null), (given.State, given.Tries, given.TakenBy));
        Assert.Equal(0, await nodes.FromLedgerAsync(db => db.Offers.CountAsync(Cancel)));
        Assert.True(await nodes.Node().DoNextAsync(Cancel));
        Assert.Equal(4000, await nodes.FromLedgerAsync(db => db.Offers.CountAsync(Cancel)));
    }

    [Fact]
    public async Task A_preview_left_to_the_nodes_says_what_the_list_comes_to_and_stores_nothing()
    {
        await using var nodes = await OpenAsync();
        var job = await nodes.OrderAsync(0, "Ref;Country;Process;Score;Bags;kg/bag;USD/kg\nL-1;Kenya;washed;86.5;10;60;9.85\nL-2;Kenya;washed;101;20;60;9.85\n", PreviewWork.Preview);
        var before = await nodes.FromLedgerAsync(LedgerTables.ReadAsync);

        Assert.True(await nodes.Node().DoNextAsync(Cancel));

        var done = await nodes.JobAsync(job);
        var found = ListPreview.FromJson(done.Found!);
        Assert.Equal((1, 0, 0, 1), (found.Accepted, found.Revised, found.Unchanged, found.SetAside));
        var offer = Assert.Single(found.Offers);
        Assert.Equal(("L-1", Score.Of(86.5m), Weight.FromKilograms(600m), PricePerWeight.Of(9.85m, Currency.Usd, PriceUnit.Kilogram)), (offer.Ref, offer.StatedScore, offer.Quantity, offer.Asked.Price));
        Assert.Contains("above 100", Assert.Single(found.Faults).Reason, StringComparison.Ordinal);
        Assert.Equal(before, await nodes.FromLedgerAsync(LedgerTables.ReadAsync));
    }

    [Fact]
    public async Task What_a_preview_found_is_swept_with_the_file_after_a_day()
    {
        await using var nodes = await OpenAsync();
        var job = await nodes.OrderAsync(40, kind: PreviewWork.Preview);
        await nodes.Node().DoNextAsync(Cancel);

        await nodes.FromLedgerAsync(db => ParkedFiles.SweepAsync(db, nodes.Clock.Now + TimeSpan.FromHours(23), Cancel));
        var kept = await nodes.FromLedgerAsync(db => db.Jobs.CountAsync(one => one.Id == job, Cancel));
        await nodes.FromLedgerAsync(db => ParkedFiles.SweepAsync(db, nodes.Clock.Now + TimeSpan.FromHours(25), Cancel));

        Assert.Equal((1, 0), (kept, await nodes.FromLedgerAsync(db => db.Jobs.CountAsync(one => one.Id == job, Cancel))));
    }

    private static async Task<Nodes> OpenAsync()
    {
        var nodes = new Nodes();
        await nodes.OpenAsync();
        return nodes;
    }

    /// <summary>Takes the job, writes the whole list, and dies before the transaction is committed.</summary>
    private static Task TakenByANodeThatDiesAsync(Nodes nodes, Domain.Id<Job> id) => nodes.InLedgerAsync(async (db, _) =>
    {
        var job = await db.Jobs.SingleAsync(one => one.Id == id, Cancel);
        job.Take("a node that dies", nodes.Clock.Now);
        await db.SaveChangesAsync(Cancel);
        await using var dying = await db.Database.BeginTransactionAsync(Cancel);
        db.Suppliers.Add(new Supplier("Long Traders", SupplierKind.Exporter));
        await db.SaveChangesAsync(Cancel);
    });
}
