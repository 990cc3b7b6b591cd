using System.IO.Compression;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Targets;
using SectionScan.Imaging.Photos;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Workbench.ViewModels.Desk;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.Files;

/// <summary>Photos and files to take away. An address names things by their ids, which are looked up; it is never a path on the
/// disk.</summary>
internal static class JobFiles
{
    private const int SmallSidePx = 640;
    private const string SmallFolder = "previews";

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/job/{id}/photo/{photoId}", Photo);
        routes.MapGet("/job/{id}/photo/{photoId}/small", Small);
        routes.MapGet("/job/{id}/section/{sectionId}/{ending}", Section);
        routes.MapGet("/job/{id}/comparison/{ending}", Comparison);
        routes.MapGet("/job/{id}/everything.zip", Everything);
        routes.MapGet("/target/{kind}/{paper}/{ending}", Target);
    }

    private static IResult Photo(string id, string photoId, JobDesk desk) => With(id, photoId, desk, (live, photo) =>
    {
        var path = live.Folder.PathOf(photo);
        return Path.GetExtension(photo.File) switch
        {
            ".jpg" => Results.File(path, "image/jpeg"),
            ".png" => Results.File(path, "image/png"),
            ".webp" => Results.File(path, "image/webp"),
            ".bmp" => Results.File(path, "image/bmp"),

            // What browsers do not show is shown as a JPEG of the same size.
            _ => PhotoView.Picture(path, int.MaxValue).TryGet(out var picture, out _) ? Results.Bytes(picture, "image/jpeg") : Results.NotFound(),
        };
    });

    private static IResult Small(string id, string photoId, JobDesk desk) => With(id, photoId, desk, (live, photo) =>
    {
        var path = live.Folder.PathOf(Path.Combine(SmallFolder, photo.Id + ".jpg"));
        if (!File.Exists(path))
        {
            var made = PhotoView.Picture(live.Folder.PathOf(photo), SmallSidePx).Then(picture =>
                OutputFolder.Open(Path.GetDirectoryName(path)!).Then(folder => folder.Write(Path.GetFileName(path), picture)));
            if (!made.TryGet(out _, out _))
            {
                return Results.NotFound();
            }
        }

        return Results.File(path, "image/jpeg");
    });

    private static IResult With(string id, string photoId, JobDesk desk, Func<LiveJob, JobPhoto, IResult> answer) =>
        desk.Open(id).TryGet(out var live, out _) && live.Job.Photo(photoId) is { } photo ? answer(live, photo) : Results.NotFound();

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

        var page = comparison.Draw(units.IsInch ? LengthUnit.Inch : LengthUnit.Millimetre);
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

    private static IResult Download(byte[] content, string name) => Results.File(content, Path.GetExtension(name) switch
    {
        ".json" => "application/json",
        ".svg" => "image/svg+xml",
        ".pdf" => "application/pdf",
        ".zip" => "application/zip",
        _ => "text/csv; charset=utf-8",
    }, name);
}
