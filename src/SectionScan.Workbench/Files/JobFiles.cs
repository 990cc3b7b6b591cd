using System.IO.Compression;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Targets;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.Files;

/// <summary>Photos and files to take away. An address names things by their ids, which are looked up; it is never a path on the
/// disk.</summary>
internal static class JobFiles
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/job/{id}/photo/{photoId}", Photo);
        routes.MapGet("/job/{id}/photo/{photoId}/small", Small);
        routes.MapGet("/job/{id}/section/{sectionId}/{ending}", Section);
        routes.MapGet("/job/{id}/comparison/{ending}", Comparison);
        routes.MapGet("/job/{id}/everything.zip", Everything);
        routes.MapGet("/target/{kind}/{paper}/{ending}", Target);
    }

    private static async Task<IResult> Photo(string id, string photoId, JobDesk desk, PhotoPreviews previews) =>
        Find(id, photoId, desk) is not { } found ? Results.NotFound()
        : Path.GetExtension(found.Photo.File) switch
        {
            ".jpg" => Results.File(found.Live.Folder.PathOf(found.Photo), "image/jpeg"),
            ".png" => Results.File(found.Live.Folder.PathOf(found.Photo), "image/png"),
            ".webp" => Results.File(found.Live.Folder.PathOf(found.Photo), "image/webp"),
            ".bmp" => Results.File(found.Live.Folder.PathOf(found.Photo), "image/bmp"),

            // What browsers do not show is shown as a JPEG of the same size.
            _ => Picture(await previews.WholeAsync(found.Live.Folder, found.Photo).ConfigureAwait(false)),
        };

    private static async Task<IResult> Small(string id, string photoId, JobDesk desk, PhotoPreviews previews) =>
        Find(id, photoId, desk) is { } found
            ? Picture(await previews.SmallAsync(found.Live.Folder, found.Photo).ConfigureAwait(false))
            : Results.NotFound();

    private static IResult Picture(Result<string> made) =>
        made.TryGet(out var path, out _) ? Results.File(path, "image/jpeg") : Results.NotFound();

    private static (LiveJob Live, JobPhoto Photo)? Find(string id, string photoId, JobDesk desk) =>
        desk.Open(id).TryGet(out var live, out _) && (live.Job.Photo(photoId) ?? live.Job.LensPhoto(photoId)) is { } photo ? (live, photo) : null;

    private static IResult Section(string id, string sectionId, string ending, JobDesk desk, UnitChoice units)
    {
        var dotted = "." + ending;
        if (!SectionFiles.Endings.Contains(dotted) || !desk.Open(id).TryGet(out var live, out _)
            || live.Job.Section(sectionId) is not { } section || !live.Measured(section).TryGet(out var read, out _))
        {
            return Results.NotFound();
        }

        using var content = new MemoryStream();
        SectionFiles.Write(dotted, read.Document, read.Measures, units.IsInch, content);
        return Download(content.ToArray(), FileNames.Safe(live.Job.NameOf(section)) + dotted);
    }

    private static IResult Comparison(string id, string ending, JobDesk desk, UnitChoice units)
    {
        using var window = new JobViewModel(desk, units);
        window.Open(id);
        using var compare = new CompareViewModel(window, desk);
        if (window.Live is null || compare.Comparison is not { } made || !made.TryGet(out var comparison, out _))
        {
            return Results.NotFound();
        }

        var page = comparison.Draw(units.OfLength);
        var name = FileNames.Safe($"{comparison.Measured.Name} on {comparison.Reference.Name}");
        return ending switch
        {
            "svg" or "pdf" => Drawing(page, name, ending),
            "csv" => Download(System.Text.Encoding.UTF8.GetBytes(comparison.ToCsv()), name + ".csv"),
            _ => Results.NotFound(),
        };
    }

    private static IResult Everything(string id, JobDesk desk, UnitChoice units)
    {
        if (!desk.Open(id).TryGet(out var live, out _))
        {
            return Results.NotFound();
        }

        using var content = new MemoryStream();
        using (var zip = new ZipArchive(content, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var section in live.Job.Sections)
            {
                if (!live.Measured(section).TryGet(out var read, out _))
                {
                    continue;
                }

                foreach (var ending in SectionFiles.Endings)
                {
                    using var entry = zip.CreateEntry($"{section.Id}-{FileNames.Safe(live.Job.NameOf(section))}{ending}").Open();
                    SectionFiles.Write(ending, read.Document, read.Measures, units.IsInch, entry);
                }
            }
        }

        return Download(content.ToArray(), FileNames.Safe(live.Job.Name) + ".zip");
    }

    private static IResult Target(string kind, string paper, string ending)
    {
        if (KindOf(kind) is not { } which || PaperSize.FromName(paper) is not { } size || ending is not ("pdf" or "svg"))
        {
            return Results.NotFound();
        }

        return Drawing(TargetPage.Build(which, size), TargetPage.FileName(which, size), ending);
    }

    private static TargetKind? KindOf(string kind) => kind switch
    {
        "sheet" => TargetKind.Sheet,
        "card" => TargetKind.Card,
        "station-tags" => TargetKind.StationTags,
        _ => null,
    };

    private static IResult Drawing(Page page, string name, string ending)
    {
        using var content = new MemoryStream();
        if (ending == "pdf")
        {
            PdfWriter.Write([page], content, page.Title);
        }
        else
        {
            SvgWriter.Write(page, content);
        }

        return Download(content.ToArray(), $"{name}.{ending}");
    }

    internal static IResult Download(byte[] content, string name) => Results.File(content, Path.GetExtension(name) switch
    {
        ".json" => "application/json",
        ".svg" => "image/svg+xml",
        ".pdf" => "application/pdf",
        ".zip" => "application/zip",
        ".dxf" => "image/vnd.dxf",
        ".html" => "text/html; charset=utf-8",
        _ => "text/csv; charset=utf-8",
    }, name);
}
