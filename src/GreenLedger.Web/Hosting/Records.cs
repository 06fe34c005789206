using GreenLedger.Data.Cupping;
using GreenLedger.Data.Papers;
using GreenLedger.Data.People;
using GreenLedger.Data.Search;
using GreenLedger.Web.Archive;
using GreenLedger.Web.Arrivals;
using GreenLedger.Web.Choosing;
using GreenLedger.Web.Contracts;
using GreenLedger.Web.Costs;
using GreenLedger.Web.Display;
using GreenLedger.Web.Offers;
using GreenLedger.Web.Origins;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using GreenLedger.Web.Stock;
using GreenLedger.Web.Trace;

namespace GreenLedger.Web.Hosting;

/// <summary>What is kept around the ledger: history, attachments and notes, search; and the acts that pages and API share.</summary>
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
            .AddScoped<PapersReader>().AddScoped<HouseZone>().AddSingleton<AttachmentRules>().AddSingleton<WorldMap>()
            .AddScoped<StockActs>().AddScoped<CountActs>().AddScoped<WarehouseActs>().AddScoped<OpeningStock>().AddScoped<PurposeActs>()
            .AddScoped<PostingActs>().AddScoped<ClaimActs>().AddScoped<ArrivalReports>().AddScoped<EarlierContracts>().AddScoped<PlotLoading>().AddScoped<OriginActs>().AddScoped<RulesActs>()
            .AddScoped<LotDossiers>().AddScoped<RecallActs>().AddScoped<HouseArchives>().AddScoped<ReadingBack>().AddScoped<PersonErasure>()
            .AddScoped<DiligenceActs>().AddSingleton(provider => provider.GetRequiredService<WorldMap>().Outlines)
            .AddHostedService<ParkedFilesSweep>();
        return builder;
    }
}
