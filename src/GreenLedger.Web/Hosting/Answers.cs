using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Http.Json;

namespace GreenLedger.Web.Hosting;

/// <summary>How the application answers: pages, the API's JSON, and what is said when something is wrong.</summary>
internal static class Answers
{
    public static WebApplicationBuilder UsePagesAndApi(this WebApplicationBuilder builder)
    {
        builder.Logging.AddFilter("Microsoft.AspNetCore", LogLevel.Warning);
        builder.Logging.AddFilter("Microsoft.EntityFrameworkCore", LogLevel.Warning);
        builder.Services.AddRazorPages().AddMvcOptions(options =>
        {
            options.MaxModelBindingCollectionSize = 20_000;
            options.ModelBinderProviders.Insert(0, new FigureBinding());
            options.ModelBindingMessageProvider.SetAttemptedValueIsInvalidAccessor((value, field) => $"{field} cannot be “{value}”: figures take a decimal point and nothing between thousands (1250.5), days the form 2026-11-27.");
        });
        builder.Services.AddProblemDetails();
        builder.Services.AddExceptionHandler<Trouble>();
        builder.Services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        builder.Services.Configure<JsonOptions>(json =>
            json.SerializerOptions.Converters.Add(new JsonStringEnumConverter(System.Text.Json.JsonNamingPolicy.CamelCase)));
        return builder;
    }

    /// <summary>The API says it in problem details; pages show the page Error.</summary>
    public static void UseTroubleAnswers(this WebApplication app)
    {
        app.UseExceptionHandler("/Error");
        app.UseWhen(IsApi, api => api.UseStatusCodePages());
        app.UseWhen(http => !IsApi(http), pages => pages.UseStatusCodePagesWithReExecute("/Error/{0}"));
    }

    private static bool IsApi(HttpContext http) => http.Request.Path.StartsWithSegments("/api");
}
