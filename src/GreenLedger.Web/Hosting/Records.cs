using GreenLedger.Data.Cupping;
using GreenLedger.Data.Papers;
using GreenLedger.Data.People;
using GreenLedger.Data.Search;
using GreenLedger.Web.Display;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;

namespace GreenLedger.Web.Hosting;

/// <summary>What is kept around the ledger: history, attachments and notes, search.</summary>
internal static class Records
{
    public static WebApplicationBuilder UseRecords(this WebApplicationBuilder builder)
    {
        builder.Services.AddHttpContextAccessor()
            .AddScoped(provider =>
            {
                var http = provider.GetRequiredService<IHttpContextAccessor>();
                return new Who(() => http.HttpContext?.User.FindPerson());
            })
            .AddScoped<Reader>().AddScoped<SealQuery>().AddScoped<HistoryQuery>().AddScoped<SearchQuery>()
            .AddScoped<PapersReader>().AddScoped<HouseZone>().AddSingleton<AttachmentRules>()
            .AddHostedService<ParkedFilesSweep>();
        return builder;
    }
}
