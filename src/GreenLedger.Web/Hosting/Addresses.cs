using System.Net;
using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.HttpOverrides;

namespace GreenLedger.Web.Hosting;

/// <summary>Where the application listens, with which certificate, and which proxies it believes.</summary>
internal static class Addresses
{
    private const string DefaultUrl = "http://localhost:5080";
    private static readonly string[] AddressSettings = ["urls", "http_ports", "https_ports"];

    public static WebApplicationBuilder ListenWhereTold(this WebApplicationBuilder builder)
    {
        var settings = builder.Configuration;
        if (AddressSettings.All(key => string.IsNullOrEmpty(settings[key])))
        {
            builder.WebHost.UseUrls(DefaultUrl);
        }

        if (settings["GreenLedger:Certificate"] is { Length: > 0 } file)
        {
            var certificate = Load(file, settings["GreenLedger:CertificatePassword"]);
            builder.WebHost.ConfigureKestrel(kestrel =>
                kestrel.ConfigureHttpsDefaults(https => https.ServerCertificate = certificate));
        }

        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = 64 * 1024 * 1024;
        });
        builder.Services.Configure<ForwardedHeadersOptions>(options => Believe(options, settings["GreenLedger:Proxies"]));
        return builder;
    }

    /// <summary>A PKCS 12 file with its password, or a PEM file that holds certificate and key.</summary>
    private static X509Certificate2 Load(string file, string? password) =>
        Path.GetExtension(file).ToLowerInvariant() is ".pem" or ".crt"
            ? X509Certificate2.CreateFromPemFile(file)
            : X509CertificateLoader.LoadPkcs12FromFile(file, password);

    /// <summary>Addresses or networks, separated by commas: <c>10.0.0.5, 172.16.0.0/12</c>.</summary>
    private static void Believe(ForwardedHeadersOptions options, string? proxies)
    {
        options.ForwardedHeaders =
            ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost;
        foreach (var proxy in (proxies ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (proxy.Contains('/'))
            {
                options.KnownIPNetworks.Add(System.Net.IPNetwork.Parse(proxy));
            }
            else
            {
                options.KnownProxies.Add(IPAddress.Parse(proxy));
            }
        }
    }
}
