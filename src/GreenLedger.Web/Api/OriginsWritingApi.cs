using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Origins;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>A producer as it is described; `version` as it was read, 0 for a new one.</summary>
internal sealed record ProducerRequest(string? Name, ProducerKind Kind, string? CountryCode = null, string? Region = null, string? Place = null, int? AltitudeFromM = null, int? AltitudeToM = null, int Version = 0)
{
    public void Describe(Producer producer)
    {
        producer.Describe(Name ?? "", Kind, CountryCode, Region, Place);
        producer.StateAltitude(AltitudeFromM, AltitudeToM);
    }
}

/// <summary>A producer as it stands, with the version that a change is sent with.</summary>
internal sealed record ProducerRecordReply(Guid Id, int Version, string Name, ProducerKind Kind, string? CountryCode, string? Region, string? Place, int? AltitudeFromM, int? AltitudeToM)
{
    public static ProducerRecordReply Of(Producer producer) => new(
        producer.Id.Value, producer.Version, producer.Name, producer.Kind, producer.CountryCode, producer.Region, producer.Place, producer.AltitudeFrom, producer.AltitudeTo);
}

/// <summary>A country of origin as it is described; months are 1 to 12, null where they are not known; `code` only for a new one.</summary>
internal sealed record CountryRequest(
    string? Name, string? Code = null, IReadOnlyList<string>? OtherNames = null, string? IcoCode = null, int? CropYearStartMonth = null, int? HarvestFromMonth = null, int? HarvestToMonth = null, decimal? UsualBagKg = null,
    string? Ports = null, bool IsLowRisk = false, int Version = 0)
{
    public void Describe(Country country)
    {
        Rule.Require(UsualBagKg is null or (>= 1m and <= 2000m), "A bag holds between 1 and 2000 kg.", nameof(UsualBagKg));
        country.Rename(Name ?? "", OtherNames ?? []);
        country.StateHarvest(CropYearStartMonth, HarvestFromMonth, HarvestToMonth);
        country.StateTrade(IcoCode, UsualBagKg is { } kg ? Weight.FromKilograms(kg) : null, Ports);
        country.Judge(IsLowRisk);
    }
}

/// <summary>The months of a harvest and of a crop year, 1 to 12; null where they are not known.</summary>
internal sealed record HarvestRequest(int? CropYearStartMonth, int? HarvestFromMonth, int? HarvestToMonth, int Version = 0);

/// <summary>A process method as it is described.</summary>
internal sealed record ProcessMethodRequest(string? Name, ProcessFamily Family, IReadOnlyList<string>? Synonyms = null, int Version = 0);

/// <summary>Producers, countries and process methods, written by scripts as the pages write them.</summary>
internal static class OriginsWritingApi
{
    private const string Whole = "All of it is sent, with the version that was read; 409 when somebody was faster.";

    public static void MapOriginsWriting(this RouteGroupBuilder origins)
    {
        origins.MapGet("/producers/{id}", ProducerAsync).WithName("ReadProducer").WithSummary("One producer, with the version that a change is sent with");
        origins.MapPost("/producers", AddProducerAsync).WithName("AddProducer").WithSummary("Adds a producer");
        origins.MapPut("/producers/{id}", ChangeProducerAsync).WithName("ChangeProducer").WithSummary("Describes a producer anew").WithDescription(Whole);
        origins.MapPost("/countries", AddCountryAsync).WithName("AddCountry").WithSummary("Adds a country of origin");
        origins.MapPut("/countries/{country}", ChangeCountryAsync).WithName("ChangeCountry").WithSummary("Describes a country of origin anew").WithDescription(Whole);
        origins.MapPut("/countries/{country}/harvest", StateHarvestAsync).WithName("StateHarvest").WithSummary("States the months of a country's harvest and crop year, on which its shipment window rests")
            .WithDescription(Whole + " The calendar of all origins is under /api/stock/calendar, and how long after the harvest they ship under /api/stock/habits.");
        origins.MapPost("/process-methods", AddMethodAsync).WithName("AddProcessMethod").WithSummary("Adds a process method; lots that wait for one of its words get it");
        origins.MapPut("/process-methods/{id}", ChangeMethodAsync).WithName("ChangeProcessMethod").WithSummary("Describes a process method anew; lots that wait for one of its words get it").WithDescription(Whole);
    }

    private static async Task<Results<Ok<ProducerRecordReply>, NotFound>> ProducerAsync(Id<Producer> id, LedgerContext db, CancellationToken cancellationToken) =>
        await db.Producers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is { } producer ? TypedResults.Ok(ProducerRecordReply.Of(producer)) : TypedResults.NotFound();

    private static async Task<Created<ProducerRecordReply>> AddProducerAsync(ProducerRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var producer = new Producer(request.Name ?? "", request.Kind, request.CountryCode);
        request.Describe(producer);
        db.Add(producer);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created($"/api/origins/producers/{producer.Id}", ProducerRecordReply.Of(producer));
    }

    private static async Task<Results<Ok<ProducerRecordReply>, NotFound>> ChangeProducerAsync(Id<Producer> id, ProducerRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.Producers.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } producer)
        {
            return TypedResults.NotFound();
        }

        db.Entry(producer).Property(one => one.Version).OriginalValue = request.Version;
        request.Describe(producer);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ProducerRecordReply.Of(producer));
    }

    private static async Task<Created<CountryReply>> AddCountryAsync(CountryRequest request, OriginActs acts, LedgerContext db, CancellationToken cancellationToken)
    {
        var country = new Country(request.Code ?? "", request.Name ?? "");
        request.Describe(country);
        await acts.AddAsync(country, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/origins/countries", CountryReply.Of(country));
    }

    private static Task<Results<Ok<CountryReply>, NotFound>> ChangeCountryAsync(string country, CountryRequest request, LedgerContext db, CancellationToken cancellationToken) =>
        WithCountryAsync(country, request.Version, request.Describe, db, cancellationToken);

    private static Task<Results<Ok<CountryReply>, NotFound>> StateHarvestAsync(string country, HarvestRequest request, LedgerContext db, CancellationToken cancellationToken) =>
        WithCountryAsync(country, request.Version, one => one.StateHarvest(request.CropYearStartMonth, request.HarvestFromMonth, request.HarvestToMonth), db, cancellationToken);

    private static async Task<Results<Ok<CountryReply>, NotFound>> WithCountryAsync(string code, int version, Action<Country> act, LedgerContext db, CancellationToken cancellationToken)
    {
        var capitals = code.ToUpperInvariant();
        if (await db.Countries.SingleOrDefaultAsync(one => one.Code == capitals, cancellationToken) is not { } country)
        {
            return TypedResults.NotFound();
        }

        db.Entry(country).Property(one => one.Version).OriginalValue = version;
        act(country);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(CountryReply.Of(country));
    }

    private static async Task<Created<ProcessMethodReply>> AddMethodAsync(ProcessMethodRequest request, OriginActs acts, LedgerContext db, CancellationToken cancellationToken)
    {
        var method = new ProcessMethod(request.Name ?? "", request.Family);
        await acts.DescribeAsync(method, request.Name, request.Family, request.Synonyms ?? [], cancellationToken);
        db.Add(method);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/origins/process-methods", ProcessMethodReply.Of(method));
    }

    private static async Task<Results<Ok<ProcessMethodReply>, NotFound>> ChangeMethodAsync(Id<ProcessMethod> id, ProcessMethodRequest request, OriginActs acts, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.ProcessMethods.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } method)
        {
            return TypedResults.NotFound();
        }

        db.Entry(method).Property(one => one.Version).OriginalValue = request.Version;
        await acts.DescribeAsync(method, request.Name, request.Family, request.Synonyms ?? [], cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ProcessMethodReply.Of(method));
    }
}
