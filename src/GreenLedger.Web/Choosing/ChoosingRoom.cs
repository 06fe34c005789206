namespace GreenLedger.Web.Choosing;

/// <summary>What the pages of the room take from the application.</summary>
internal static class ChoosingRoom
{
    public static WebApplicationBuilder UseChoosing(this WebApplicationBuilder builder)
    {
        builder.Services.AddScoped<ShortlistPapers>().AddScoped<PlanDesk>();
        return builder;
    }
}
