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

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/job/{id}/photos", (Func<string, HttpContext, JobDesk, IAntiforgery, Task<IResult>>)TakePhotoAsync);
        routes.MapPost("/job/{id}/lens-photos", (Func<string, HttpContext, JobDesk, IAntiforgery, Task<IResult>>)TakeLensPhotoAsync);
    }

    /// <summary>Takes the one photo of a request into a job.</summary>
    public static Task<IResult> TakeAsync(HttpContext context, LiveJob live, bool isOfLens = false) => TakeFileAsync(context, async (content, name) =>
    {
        var taken = await (isOfLens ? live.TakeLensPhotoAsync(content, name, context.RequestAborted) : live.TakePhotoAsync(content, name, context.RequestAborted))
            .ConfigureAwait(false);
        return taken.TryGet(out var photo, out var problem) ? Results.Json(new { photo.Id, Name = photo.GivenName }) : Refused(problem);
    });

    /// <summary>Why a request is not from our own page, or null. The token must stand in the header: then the body is not read before it is
    /// known to be ours.</summary>
    public static async Task<IResult?> ForeignAsync(HttpContext context, IAntiforgery antiforgery) =>
        context.Request.Headers[TokenHeader].Count == 1 && await antiforgery.IsRequestValidAsync(context).ConfigureAwait(false)
            ? null
            : Results.Text("Reload the page and send the file again.", statusCode: StatusCodes.Status400BadRequest);

    /// <summary>Takes the one file of a request.</summary>
    /// <param name="context">The request.</param>
    /// <param name="take">Told the file's bytes and what the sender calls it; neither is trusted.</param>
    public static async Task<IResult> TakeFileAsync(HttpContext context, Func<Stream, string, Task<IResult>> take)
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
                return await take(part.Body, name.Value ?? string.Empty).ConfigureAwait(false);
            }
        }

        return Results.BadRequest();
    }

    private static Task<IResult> TakePhotoAsync(string id, HttpContext context, JobDesk desk, IAntiforgery antiforgery) =>
        TakeAsync(id, context, desk, antiforgery, isOfLens: false);

    private static Task<IResult> TakeLensPhotoAsync(string id, HttpContext context, JobDesk desk, IAntiforgery antiforgery) =>
        TakeAsync(id, context, desk, antiforgery, isOfLens: true);

    private static async Task<IResult> TakeAsync(string id, HttpContext context, JobDesk desk, IAntiforgery antiforgery, bool isOfLens) =>
        await ForeignAsync(context, antiforgery).ConfigureAwait(false) is { } foreign ? foreign
        : desk.Open(id).TryGet(out var live, out var problem) ? await TakeAsync(context, live, isOfLens).ConfigureAwait(false)
        : Refused(problem);

    /// <summary>Why a photo was not taken, for the page that sent it.</summary>
    public static IResult Refused(Problem problem) => Results.Json(
        new { problem.Code, problem.What, problem.Where, problem.Remedy },
        statusCode: problem.Code == "upload-too-large" ? StatusCodes.Status413PayloadTooLarge : StatusCodes.Status422UnprocessableEntity);
}
