using GreenLedger.Documents.Archive;
using GreenLedger.Web.Archive;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>The whole house as one archive, as its page gives it.</summary>
internal static class ArchiveApi
{
    public static void MapArchiveApi(this IEndpointRouteBuilder api)
    {
        var archive = api.MapGroup("/archive").WithTags("Archive");
        archive.MapGet("", TakeAsync).WithName("TakeArchive").WithSummary("The whole house as one ZIP file: every table as CSV, every file as received, a description of each column")
            .WithDescription("For an administrator's token. It holds everything, personal data included, and no password, token or key of a sign-in. Each taking is written down, and counts as opening the key of every open session; "
                + "422 while the owner of the token lays out, pours or cups in one.")
            .Produces(StatusCodes.Status200OK, contentType: HouseArchive.MediaType);
    }

    private static async Task<FileStreamHttpResult> TakeAsync(HouseArchives archives, HttpContext http, CancellationToken cancellationToken)
    {
        var taken = await archives.TakeAsync(http.User.Person(), cancellationToken);
        return TypedResults.Stream(taken.Stream, HouseArchive.MediaType, taken.FileName);
    }
}
