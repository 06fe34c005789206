using GreenLedger.Data.Offers;

namespace GreenLedger.Web.Offers;

/// <summary>What the offers' pages, API and jobs are made of.</summary>
internal static class OffersWork
{
    public static WebApplicationBuilder UseOffers(this WebApplicationBuilder builder)
    {
        builder.Services.AddScoped<ListStore>();
        builder.Services.AddScoped<ListLoading>();
        builder.Services.AddScoped<Mending>();
        builder.Services.AddScoped<IWork, ListWork>();
        builder.Services.AddScoped<IWork, PreviewWork>();
        builder.Services.AddSingleton<JobProgress>();
        builder.Services.AddSingleton<JobWorker>();
        builder.Services.AddHostedService(services => services.GetRequiredService<JobWorker>());
        return builder;
    }
}
