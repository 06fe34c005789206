namespace GreenLedger.Web.Papers;

/// <summary>A file that somebody sent is handed out as a download only: no browser may open it as a page of ours.</summary>
internal static class AttachmentDownload
{
    public static void Guard(HttpResponse response)
    {
        response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
        response.Headers.XContentTypeOptions = "nosniff";
        response.Headers.CacheControl = "private, no-store";
    }
}
