using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Summaries;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>The bands of quality that summaries read scores by.</summary>
internal static class BandsApi
{
    public static void MapBands(this RouteGroupBuilder summaries)
    {
        summaries.MapGet("/bands", ReadAsync).WithName("ReadQualityBands").WithSummary("The bands of quality that the purchase summary reads scores by");
        summaries.MapPut("/bands", ChangeAsync).WithName("ChangeQualityBands").WithSummary("Changes the bands of quality")
            .WithDescription("All of them are sent, with the version that was read; 409 when somebody was faster. The lowest band begins at 0 points.");
    }

    private static async Task<Ok<BandsBody>> ReadAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok(BandsBody.Of(await db.QualityBands.AsNoTracking().StatedAsync(cancellationToken) ?? new QualityBands()));

    private static async Task<Ok<BandsBody>> ChangeAsync(BandsBody body, LedgerContext db, CancellationToken cancellationToken)
    {
        var form = new Id<CuppingForm>(body.FormId);
        Rule.Require(await db.CuppingForms.AnyAsync(one => one.Id == form, cancellationToken), "Choose the cupping form.", nameof(body.FormId));
        Rule.Require(body.Bands is not null, "Send the bands.", nameof(body.Bands));
        var bands = await db.ToChangeAsync<QualityBands>(body.Version, cancellationToken);
        bands.State(form, [.. body.Bands.Select(band => new QualityBand(band.Name ?? "", Score.Of(band.FromPoints)))]);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(BandsBody.Of(bands));
    }
}

/// <summary>From so many points up to the next band.</summary>
internal sealed record BandBody(string? Name, decimal FromPoints);

/// <param name="FormId">The form whose scores are read.</param>
/// <param name="Bands">The best first.</param>
internal sealed record BandsBody(int Version, Guid FormId, IReadOnlyList<BandBody> Bands)
{
    public static BandsBody Of(QualityBands bands) => new(bands.Version, bands.FormId.Value, [.. bands.Bands.Select(band => new BandBody(band.Name, band.From.Points))]);
}
