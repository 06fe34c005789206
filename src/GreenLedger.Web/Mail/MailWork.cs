using GreenLedger.Web.Due;

namespace GreenLedger.Web.Mail;

/// <summary>What sending mail is made of.</summary>
internal static class MailWork
{
    public static WebApplicationBuilder UseMail(this WebApplicationBuilder builder)
    {
        // Read at the start, so that a setting which cannot be read stops it with its sentence.
        builder.Services.AddSingleton(MailSettings.Of(builder.Configuration));
        builder.Services.AddScoped<Outbox>();
        builder.Services.AddScoped<LetterCases>();
        builder.Services.AddScoped<DueMailing>();
        builder.Services.AddSingleton<MailSender>();
        builder.Services.AddHostedService(services => services.GetRequiredService<MailSender>());
        builder.Services.AddSingleton<DueMailClock>();
        builder.Services.AddHostedService(services => services.GetRequiredService<DueMailClock>());
        return builder;
    }
}
