using System.Globalization;
using System.IO.Compression;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Jobs.Proving;
using SectionScan.Jobs.TargetShapes;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.Files;

/// <summary>What the commands write, to take away: the same files, written into a folder that is gone afterwards. An address names a kind
/// of thing and an ending; it is never a path on the disk.</summary>
internal static class MadeFiles
{
    private const string All = "zip";
    private const string PagePrefix = "page-";

    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet("/job/{id}/made/{what}/{ending}", Take);

    private static IResult Take(string id, string what, string ending, JobDesk desk, JobBenches benches, UnitChoice units)
    {
        if (!desk.Open(id).TryGet(out var live, out _))
        {
            return Results.NotFound();
        }

        if (what == "walls")
        {
            return ending == "csv" && live.Job.WallsFile is { } walls
                ? Results.File(live.Folder.PathOf(walls), "text/csv; charset=utf-8", "walls.csv") : Results.NotFound();
        }

        var bench = benches.Of(live)!;
        if (ending.StartsWith(PagePrefix, StringComparison.Ordinal))
        {
            return Page(what, ending[PagePrefix.Length..], bench, units.IsInch);
        }

        var folder = Directory.CreateTempSubdirectory("sectionscan-made-").FullName;
        try
        {
            return Write(what, live, bench, units.IsInch, folder) is { } made && made.TryGet(out var files, out _)
                ? Chosen(files, ending, FileNames.Safe($"{live.Job.Name} {what}")) : Results.NotFound();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static Result<IReadOnlyList<string>>? Write(string what, LiveJob live, JobBench bench, bool isInch, string folder)
    {
        var unit = isInch ? LengthUnit.Inch : LengthUnit.Millimetre;
        return what switch
        {
            "target" => bench.Targets()?.Then(targets => TargetShapeFiles.Write(targets, unit, folder)),
            "cut-plan" => bench.Plan(isInch)?.Then(plan => plan.Write(folder)),
            "templates" => bench.Templates(isInch)?.Then(set => set.Write(folder)).Then<IReadOnlyList<string>>(answer => answer.Files.ToList()),
            "proof" => bench.Proof()?.Then(proof => ProofFiles.Write(
                proof.Proved, proof.Unproved, unit, PaperSize.FromName(live.Job.Cut.Paper) ?? PaperSize.A4, live.Program, folder)),
            "job" => JobExport.Write(live.Folder, live.Job, bench.Targets() is { } settled && settled.TryGet(out var targets, out _) ? targets : null, folder),
            _ => null,
        };
    }

    /// <summary>One page to look at, counted from 1.</summary>
    private static IResult Page(string what, string number, JobBench bench, bool isInch)
    {
        var pages = what switch
        {
            "cut-plan" => bench.Plan(isInch)?.Then<IReadOnlyList<Page>>(plan => plan.Pages(plan.Title).ToList()),
            "templates" => bench.Templates(isInch)?.Then<IReadOnlyList<Page>>(set => set.Pages.ToList()),
            _ => null,
        };
        if (pages is null || !pages.TryGet(out var all, out _)
            || !int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var at) || at < 1 || at > all.Count)
        {
            return Results.NotFound();
        }

        using var content = new MemoryStream();
        SvgWriter.Write(all[at - 1], content);
        return Results.Bytes(content.ToArray(), "image/svg+xml");
    }

    /// <summary>The one file of an ending, several of it as one archive, or all.</summary>
    private static IResult Chosen(IReadOnlyList<string> files, string ending, string name)
    {
        var chosen = ending == All ? files : [.. files.Where(file => file.EndsWith("." + ending, StringComparison.Ordinal))];
        return chosen.Count switch
        {
            0 => Results.NotFound(),
            1 when ending != All => JobFiles.Download(File.ReadAllBytes(chosen[0]), Path.GetFileName(chosen[0])),
            _ => JobFiles.Download(Packed(chosen), ending == All ? name + ".zip" : $"{name}-{ending}.zip"),
        };
    }

    private static byte[] Packed(IReadOnlyList<string> files)
    {
        using var content = new MemoryStream();
        using (var zip = new ZipArchive(content, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var file in files)
            {
                zip.CreateEntryFromFile(file, Path.GetFileName(file));
            }
        }

        return content.ToArray();
    }
}
