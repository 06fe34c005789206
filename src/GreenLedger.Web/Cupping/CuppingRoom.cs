namespace GreenLedger.Web.Cupping;

/// <summary>What the pages and the API of the room take from the application.</summary>
internal static class CuppingRoom
{
    public static WebApplicationBuilder UseCupping(this WebApplicationBuilder builder)
    {
        builder.Services.AddScoped<PastResults>().AddScoped<AloneStart>().AddSingleton<DraftWriter>()
            .AddHostedService(provider => provider.GetRequiredService<DraftWriter>());
        return builder;
    }
}
