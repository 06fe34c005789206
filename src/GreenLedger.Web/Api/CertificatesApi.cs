using GreenLedger.Data;
using GreenLedger.Data.Certificates;
using GreenLedger.Domain;
using GreenLedger.Domain.Certificates;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>What a certificate says; `supplierId` or `producerId` as its holder is.</summary>
internal sealed record CertificateRequest(string? Scheme, CertificateHolder Holder, Guid? SupplierId, Guid? ProducerId, string? Number, string? Scope, string? IssuedBy, DateOnly From, DateOnly Until)
{
    public CertificateTerms Terms() => new(
        Scheme, Holder, SupplierId is { } supplier ? new Id<Supplier>(supplier) : null, ProducerId is { } producer ? new Id<Producer>(producer) : null, Number, Scope, IssuedBy, From, Until);
}

internal sealed record StandingRequest(CertificateState Standing, string? Reason);

/// <summary>A certificate as it stands.</summary>
internal sealed record CertificateReply(
    Guid Id, string Scheme, string Holder, Guid? SupplierId, Guid? ProducerId, string Number, string? Scope, string? IssuedBy, DateOnly From, DateOnly Until, string Standing, string? StandingReason)
{
    public static CertificateReply Of(Certificate certificate) => new(
        certificate.Id.Value, certificate.Scheme, certificate.Holder.ToString(), certificate.SupplierId?.Value, certificate.ProducerId?.Value, certificate.Number, certificate.Scope, certificate.IssuedBy,
        certificate.From, certificate.Until, certificate.Standing.ToString(), certificate.StandingReason);
}

/// <summary>Which day matters for which scheme, and when the house is told of an end.</summary>
/// <param name="ByContractDay">Schemes of which the day matters that the contract was signed; of all others the day on board does.</param>
internal sealed record CertificateHabitsBody(int Version, int FirstAlertDays, int LastAlertDays, IReadOnlyList<string> ByContractDay)
{
    public static CertificateHabitsBody Of(CertificateHabits habits) => new(
        habits.Version, habits.FirstAlertDays, habits.LastAlertDays, habits.ByContractDay.Split(", ", StringSplitOptions.RemoveEmptyEntries));
}

/// <summary>A scheme that a lot claims, on the day that matters.</summary>
internal sealed record ClaimedSchemeReply(Guid LotId, string Scheme, DateOnly? On, Guid? CertificateId, bool Holds, string Said);

/// <summary>Certificates, and what lots claim.</summary>
internal static class CertificatesApi
{
    public static void MapCertificatesApi(this IEndpointRouteBuilder api)
    {
        var certificates = api.MapGroup("/certificates").WithTags("Certificates");
        certificates.MapGet("", ListAsync).WithName("ListCertificates").WithSummary("Certificates by scheme and last day; with `runsOn` those that have not ended on that day");
        certificates.MapPost("", AddAsync).WithName("AddCertificate").WithSummary("Adds a certificate");
        certificates.MapPut("/{id}", ChangeAsync).WithName("ChangeCertificate").WithSummary("Says anew what a certificate says");
        certificates.MapPost("/{id}/standing", StandAsync).WithName("StandCertificate").WithSummary("Suspended, withdrawn or valid again, with the reason");
        certificates.MapGet("/habits", HabitsAsync).WithName("ReadCertificateHabits").WithSummary("Which day matters for which scheme, and how many days before the end the house is told");
        certificates.MapPut("/habits", KeepHabitsAsync).WithName("ChangeCertificateHabits").WithSummary("Changes which day matters for which scheme, and the days of the alerts")
            .WithDescription("All of them are sent, with the version that was read; 409 when somebody was faster.");
        certificates.MapGet("/contracts/{id}", OfContractAsync).WithName("ListClaimedSchemes").WithSummary("What the lots of a contract claim, held against certificates on the day that matters");
    }

    private static async Task<Ok<List<CertificateReply>>> ListAsync(CertificateQuery query, CancellationToken cancellationToken, string? scheme = null, DateOnly? runsOn = null) =>
        TypedResults.Ok((await query.ListAsync(scheme, runsOn, cancellationToken)).Select(one => CertificateReply.Of(one.Certificate)).ToList());

    private static async Task<Ok<CertificateReply>> AddAsync(CertificateRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        await RequireHolderAsync(request, db, cancellationToken);
        var certificate = new Certificate(request.Terms());
        db.Add(certificate);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(CertificateReply.Of(certificate));
    }

    private static async Task<Results<Ok<CertificateReply>, NotFound>> ChangeAsync(Id<Certificate> id, CertificateRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.Certificates.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } certificate)
        {
            return TypedResults.NotFound();
        }

        await RequireHolderAsync(request, db, cancellationToken);
        certificate.State(request.Terms());
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(CertificateReply.Of(certificate));
    }

    private static async Task<Results<Ok<CertificateReply>, NotFound>> StandAsync(Id<Certificate> id, StandingRequest request, LedgerContext db, TimeProvider clock, HttpContext http, CancellationToken cancellationToken)
    {
        if (await db.Certificates.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } certificate)
        {
            return TypedResults.NotFound();
        }

        certificate.Stand(request.Standing, request.Reason, http.User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(CertificateReply.Of(certificate));
    }

    private static async Task<Results<Ok<List<ClaimedSchemeReply>>, NotFound>> OfContractAsync(Id<Domain.Contracts.Contract> id, LedgerContext db, CertificateQuery query, HouseZone house, CancellationToken cancellationToken)
    {
        var contract = await db.Contracts.AsNoTracking().Include(one => one.Versions).Include(one => one.Lots).SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        return contract is null
            ? TypedResults.NotFound()
            : TypedResults.Ok((await query.OfContractAsync(contract, house.Today, cancellationToken))
                .SelectMany(lot => lot.Claims.Select(claim => new ClaimedSchemeReply(lot.LotId.Value, claim.Scheme, claim.On, claim.Held?.Certificate.Id.Value, claim.Holds, claim.Said))).ToList());
    }

    private static async Task<Ok<CertificateHabitsBody>> HabitsAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok(CertificateHabitsBody.Of(await db.CertificateHabits.AsNoTracking().OfHouseAsync(cancellationToken)));

    private static async Task<Ok<CertificateHabitsBody>> KeepHabitsAsync(CertificateHabitsBody body, LedgerContext db, CancellationToken cancellationToken)
    {
        var habits = await db.ToChangeAsync<CertificateHabits>(body.Version, cancellationToken);
        habits.Keep(body.FirstAlertDays, body.LastAlertDays, string.Join(", ", body.ByContractDay ?? []));
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(CertificateHabitsBody.Of(habits));
    }

    private static async Task RequireHolderAsync(CertificateRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var terms = request.Terms();
        Rule.Require(terms.SupplierId is null || await db.Suppliers.AnyAsync(one => one.Id == terms.SupplierId, cancellationToken), "There is no such supplier.", nameof(request.SupplierId));
        Rule.Require(terms.ProducerId is null || await db.Producers.AnyAsync(one => one.Id == terms.ProducerId, cancellationToken), "There is no such producer.", nameof(request.ProducerId));
    }
}
