using System.Security.Cryptography;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using SectionScan.Archive.Exchange;
using SectionScan.Archive.Library;
using SectionScan.Jobs.Libraries;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.Files;

/// <summary>Sections of the library as one file to take away, and such files from other shops taken in.</summary>
internal static class LibraryFiles
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/library/all.zip", (JobDesk desk) => Export(desk, library => library.List().Then<long[]>(all => all.Select(each => each.Id).ToArray()), "library"));
        routes.MapGet("/library/entry/{id:long}.zip", (long id, JobDesk desk) => Export(
            desk, library => library.Show(id).Then<long[]>(_ => new[] { id }), FormattableString.Invariant($"library-entry-{id}")));
        routes.MapPost("/library/import", (Func<HttpContext, JobDesk, IAntiforgery, Task<IResult>>)ImportAsync);
    }

    private static IResult Export(JobDesk desk, Func<SectionLibrary, Result<long[]>> choose, string name)
    {
        // Beside the jobs, not in a folder that everybody may write to; gone when it is sent.
        var path = NewFile(desk);
        var made = LibrarySource.UseExisting(desk.LibraryPath, desk.Time, library => choose(library).Then(ids => library.Export(path, ids, withPhotos: true)));
        if (!made.TryGet(out _, out var problem))
        {
            return PhotoUpload.Refused(problem);
        }

#pragma warning disable IDISP001 // the answer disposes it when it is sent
        var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.None, 4096, FileOptions.DeleteOnClose);
#pragma warning restore IDISP001
        return Results.Stream(file, "application/zip", name + ".zip");
    }

    private static async Task<IResult> ImportAsync(HttpContext context, JobDesk desk, IAntiforgery antiforgery) =>
        await PhotoUpload.ForeignAsync(context, antiforgery).ConfigureAwait(false)
            ?? await PhotoUpload.TakeFileAsync(context, (content, name) => ImportAsync(content, name, desk, context.RequestAborted)).ConfigureAwait(false);

    private static async Task<IResult> ImportAsync(Stream content, string name, JobDesk desk, CancellationToken stop)
    {
        var path = NewFile(desk);
        try
        {
            var file = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
            await using (file.ConfigureAwait(false))
            {
                await content.CopyToAsync(file, stop).ConfigureAwait(false);
            }

            if (!LibrarySource.Use(desk.LibraryPath, desk.Time, library => library.Import(path, skipsTaken: true)).TryGet(out var report, out var problem))
            {
                return PhotoUpload.Refused(problem with { Where = Path.GetFileName(name) });
            }

            desk.TellLibraryChanged();
            return Results.Json(new { Message = InWords(report) });
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static string InWords(ImportReport report)
    {
        var words = FormattableString.Invariant($"{report.Added.Count} section{(report.Added.Count == 1 ? string.Empty : "s")} added");
        words += report.AlreadyThere.Count > 0 ? FormattableString.Invariant($"; {report.AlreadyThere.Count} are here already") : string.Empty;
        return report.Skipped.Count > 0
            ? $"{words}; not taken, since another section has the place here: {string.Join(", ", report.Skipped.Select(place => place.Path))}."
            : words + ".";
    }

    private static string NewFile(JobDesk desk) => Path.Combine(desk.FolderPath, $"library-{RandomNumberGenerator.GetHexString(16)}.part");
}
