using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Net.Http.Headers;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.Files;

/// <summary>Takes one photo a request into a job.</summary>
internal static class PhotoUpload
{
    /// <summary>The header that carries the token of our own page.</summary>
    public const string TokenHeader = "X-Form-Token";

    /// <summary>The longest request: one photo and what goes round it.</summary>
    public const long MostRequestBytes = PhotoIntake.MostBytes + 100_000;

    private const int LongestBoundary = 200;

    public static void Map(IEndpointRouteBuilder routes) => routes.MapPost("/job/{id}/photos", (Func<string, HttpContext, JobDesk, IAntiforgery, Task<IResult>>)TakeAsync);

    private static async Task<IResult> TakeAsync(string id, HttpContext context, JobDesk desk, IAntiforgery antiforgery)
    {
        // The token must stand in the header: then the body is not read before it is known to be ours.
        if (context.Request.Headers[TokenHeader].Count != 1 || !await antiforgery.IsRequestValidAsync(context).ConfigureAwait(false))
        {
            return Results.Text("Reload the page and send the photo again.", statusCode: StatusCodes.Status400BadRequest);
        }

        return desk.Open(id).TryGet(out var live, out var problem) ? await TakeAsync(context, live).ConfigureAwait(false) : Refused(problem);
    }

    /// <summary>Takes the one file of a request into a job.</summary>
    public static async Task<IResult> TakeAsync(HttpContext context, LiveJob live)
    {
        var request = context.Request;
        if (request.ContentLength is null or > MostRequestBytes)
        {
            return Refused(JobProblems.UploadTooLarge("upload", PhotoIntake.MostBytes));
        }

        if (!MediaTypeHeaderValue.TryParse(request.ContentType, out var type) || type.MediaType != "multipart/form-data"
            || HeaderUtilities.RemoveQuotes(type.Boundary).Value is not { Length: > 0 and < LongestBoundary } boundary)
        {
            return Results.BadRequest();
        }

        var reader = new MultipartReader(boundary, request.Body);
        while (await reader.ReadNextSectionAsync(context.RequestAborted).ConfigureAwait(false) is { } part)
        {
            if (part.GetContentDispositionHeader() is { } disposition && disposition.IsFileDisposition())
            {
                var name = HeaderUtilities.RemoveQuotes(disposition.FileNameStar.HasValue ? disposition.FileNameStar : disposition.FileName);
                var taken = await live.TakePhotoAsync(part.Body, name.Value ?? string.Empty, context.RequestAborted).ConfigureAwait(false);
                return taken.TryGet(out var photo, out var problem)
                    ? Results.Json(new { photo.Id, Name = photo.GivenName })
                    : Refused(problem);
            }
        }

        return Results.BadRequest();
    }

    /// <summary>Why a photo was not taken, for the page that sent it.</summary>
    public static IResult Refused(Problem problem) => Results.Json(
        new { problem.Code, problem.What, problem.Where, problem.Remedy },
        statusCode: problem.Code == "upload-too-large" ? StatusCodes.Status413PayloadTooLarge : StatusCodes.Status422UnprocessableEntity);
}
