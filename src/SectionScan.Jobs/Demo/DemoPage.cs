using System.Globalization;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Summaries;
using SectionScan.Jobs.Digitising;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Jobs.Demo;

/// <summary>The page that the demonstration ends with. Every number and verdict on it comes from the measured outlines.</summary>
/// <param name="outcome">What was made.</param>
/// <param name="answer">What the library answered.</param>
/// <param name="program">Name and version of the program.</param>
internal sealed class DemoPage(DemoOutcome outcome, LibraryAnswer answer, string program)
{
    private readonly DigitisedPort exemplar = PortOf(outcome, DemoScenario.Exemplar);
    private readonly DigitisedPort asCast = PortOf(outcome, DemoScenario.AsCast);
    private readonly DigitisedPort finished = PortOf(outcome, DemoScenario.Finished);
    private readonly DigitisedPort sawn = PortOf(outcome, DemoScenario.Sawn);

    /// <summary>Puts the page together.</summary>
    public SummaryPage Build() => new(
        $"{DemoScenario.Head}: an intake port, measured from photographs",
        "Slices of three moulds were photographed on a printed sheet: a proven port (the exemplar), the same port of another head as it "
        + "was cast, and that port after grinding. This page shows their true-size sections and how far the finished port is from the exemplar.",
        [
            new("What was found", [.. Findings()]),
            new("Sizes along the port", [.. Sizes()]),
            new("The finished port on the exemplar", [.. Compared(finished, outcome.Finished)]),
            new("The port as cast on the exemplar", [.. Compared(asCast, outcome.AsCast)]),
            new("The sawn casting", [.. Sawn()]),
            new("The section library", [.. Library()]),
            new("The photographs", [.. Photographs()]),
            new("How it was done", [.. Provenance()]),
            new("Before anything is cut", [.. Cautions()]),
            new("Files", [Files()]),
        ])
    {
        Footer = $"{program}. Rendered photographs, invented engine.",
    };

    private IEnumerable<SummaryBlock> Findings()
    {
        yield return new NoteBlock("The photographs are rendered, and the engine is invented. Nothing here describes a real cylinder head.");
        var beyond = outcome.Finished.Where(each => each.IsBeyond).ToList();
        foreach (var each in beyond)
        {
            yield return new NoteBlock(
                Invariant($"Finished port, station {each.Station}: {each.Result.Highest.DeviationMm:0.00} ± {each.DeviationExpandedUncertaintyMm:0.00} mm beyond the exemplar at {DemoTables.Place(each.Result.Highest)}, over {100 * each.ShareBeyond:0} % of the outline. Metal that is gone does not come back: measure the wall there."),
                IsCaution: true);
        }

        var within = outcome.Finished.Where(each => !each.IsBeyond && each.IsShort).ToList();
        if (within.Count > 0)
        {
            var (least, most) = (within.Min(each => -each.Result.MeanDeviationMm), within.Max(each => -each.Result.MeanDeviationMm));
            yield return new ParagraphBlock(Invariant(
                $"At {Stations(within)} the finished port stays inside the exemplar: on average {least:0.00} to {most:0.00} mm of metal are left on the wall."));
        }

        var (smallest, largest) = (outcome.AsCast.Min(Missing), outcome.AsCast.Max(Missing));
        yield return new ParagraphBlock(Invariant(
            $"As cast, the port has {smallest:0.0} to {largest:0.0} % less area than the exemplar. {outcome.SectionCount} sections were measured in {outcome.Ports.Sum(port => port.Photos.Count)} photographs; half of the areas are known to {TypicalAreaPercent(0.5):0.0} % (k = 2), the least certain to {TypicalAreaPercent(1):0.0} %."));

        static double Missing(StationComparison each) => -100 * each.AreaDifferenceMm2.Value / AreaOf(each.Reference).Value;
    }

    private IEnumerable<SummaryBlock> Sizes()
    {
        yield return DemoTables.Areas(exemplar, asCast, finished, outcome.Finished);
        yield return DemoTables.Sizes(exemplar, asCast, finished, outcome.Finished);
        yield return new ParagraphBlock(
            "The uncertainty behind ± is expanded, U = 2u, about 95 %. That of a difference counts both ports as independent, though they "
            + "share the sheet and the lens; it is rather too large.");
    }

    private static IEnumerable<SummaryBlock> Compared(DigitisedPort port, IReadOnlyList<StationComparison> compared)
    {
        yield return new ParagraphBlock(
            "Each section was moved and turned to the best fit on the exemplar's. Tags are laid beside the slices by hand, a few degrees "
            + "askew, so that neither place nor turn of a slice on the sheet means anything; what remains after the fit is shape and size, "
            + "which a grinder can change. One thing does not show this way: a port that is shifted or turned as a whole in its head. The fit "
            + "goes by the length of wall that agrees, so that a spot cut too far does not pull it along.");
        yield return DemoTables.Deviations(
            "Deviation of the wall from the exemplar's in mm: + outside (metal gone), − inside (metal left). Places are seen with the flow; angles count from right (0°) by way of the roof (90°). Less than U (k = 2) cannot be told from nothing; a single spot can be a burr or a bubble, so look at the photograph too.",
            compared);
        yield return new DrawingBlock(
            [.. compared.Select(each => each.Comparison.Draw(LengthUnit.Millimetre))],
            $"The exemplar (full line) and the port {port.Port.Name} (dashed), station by station. Orange: outside the exemplar, metal already gone. Blue: inside, metal left.");
    }

    private IEnumerable<SummaryBlock> Sawn()
    {
        yield return new ParagraphBlock("Ports in a sawn face are measured with the small card lying on the metal; no thickness comes in.");
        yield return DemoTables.Openings(sawn);
    }

    private IEnumerable<SummaryBlock> Library()
    {
        yield return new ParagraphBlock(
            $"All sections with a station are kept in {DemoLibrary.FileName}, with head, port, station, stage, notes and tags, and with the "
            + "whole section document. A shape finds its like:");
        yield return DemoTables.Found(answer);
    }

    private IEnumerable<SummaryBlock> Photographs()
    {
        foreach (var port in outcome.Ports)
        {
            foreach (var photo in port.Photos)
            {
                var picture = photo.Files.First(file => file.EndsWith(".jpg", StringComparison.Ordinal));
                yield return new PictureBlock(
                    $"{port.Port.Folder}/{Path.GetFileName(picture)}",
                    $"Photograph {photo.Digitised!.Photo.File} with the measured outlines drawn over it",
                    $"{photo.Digitised.Photo.File}, {port.Port.Name}: the measured outlines over the rendered photograph.");
            }
        }
    }

    private IEnumerable<SummaryBlock> Provenance()
    {
        var lens = outcome.Lens;
        yield return new ParagraphBlock(Invariant(
            $"Lens profile from {lens.Photos.Count} photographs of the bare sheet: focal length {lens.Lens.FocalXPx:0.0} px, reprojection error {lens.RmsPx:0.000} px (root mean square), {100 * lens.CoveredShare:0} % of the frame covered. The check bars of the rendered sheet read their nominal length (print ratio {DemoScenario.PrintRatio.X:0.0000}, {DemoScenario.PrintRatio.Y:0.0000})."));
        yield return new TableBlock(
            "Each photograph, what it was told, and how the target fits.",
            ["Photo", "Shows", "Thickness", "Corners", "Fit, px", "Camera height", "Tilt", "SHA-256 begins"],
            [
                .. outcome.Ports.SelectMany(port => port.Photos.Select(photo => (IReadOnlyList<string>)
                [
                    photo.Digitised!.Photo.File, port.Port.Name, port.Port.ThicknessMm is { } mm ? Invariant($"{mm:0.#} mm") : "–",
                    Invariant($"{photo.Digitised.Target.CornersFound} of {photo.Digitised.Target.CornersExpected}"),
                    Invariant($"{photo.Digitised.Target.RmsPx:0.00}"), Invariant($"{photo.Digitised.Camera.HeightMm:0} mm"),
                    Invariant($"{photo.Digitised.Camera.TiltDeg:0.0}°"), photo.Digitised.Photo.Sha256[..12],
                ])),
            ]);
        foreach (var warning in Warnings())
        {
            yield return new NoteBlock(warning);
        }
    }

    private IEnumerable<string> Warnings() => outcome.Ports.SelectMany(port => port.Photos).SelectMany(photo =>
        photo.Digitised!.Warnings.Select(warning => $"{photo.Digitised.Photo.File}: {warning}").Concat(
            photo.Digitised.Sections.SelectMany(section => section.Warnings.Select(
                warning => Invariant($"{photo.Digitised.Photo.File}, station {section.Station}: {warning}")))));

    /// <summary>The usual cautions of work on a port.</summary>
    internal static IEnumerable<SummaryBlock> Cautions()
    {
        yield return new NoteBlock(
            "These numbers say where two shapes differ, not where metal may go. Measure the wall with an ultrasonic gauge before and while "
            + "you cut, and stop where it gets thin; a port that breaks into a water or oil passage ends the head.",
            IsCaution: true);
        yield return new NoteBlock(
            "Grinding throws chips and fine dust: eye protection, a respirator for metal dust, hearing protection, no loose sleeves near the "
            + "tool. Wash and pressure-test the head before it goes back. Larger is not always better: it costs low-speed torque. Whether an "
            + "engine may be changed at all, and how it must be tested, is for local codes (emissions, roadworthiness) and licensed practice to say.",
            IsCaution: true);
    }

    private FilesBlock Files()
    {
        var files = new List<(string, string)>
        {
            (RunDemo.LensName, "the lens profile"),
            (Path.GetFileName(outcome.LibraryPath), "the section library (SQLite)"),
        };
        foreach (var port in outcome.Ports)
        {
            foreach (var section in port.Sections)
            {
                var station = section.Document.Section.Station is { } number ? Invariant($"station {number}") : "an opening";
                files.Add(($"{port.Port.Folder}/{section.FileName}", $"{port.Port.Name}, {station}: the section document; drawing (SVG) and outline (CSV) lie beside it"));
            }
        }

        return new(files);
    }

    /// <summary>Expanded uncertainty of the areas in percent: that which a share of them does not exceed.</summary>
    private double TypicalAreaPercent(double share)
    {
        var shares = outcome.Ports.SelectMany(port => port.Sections).Select(AreaOf)
            .Select(area => 100 * area.ExpandedUncertainty / area.Value).Order().ToList();
        return shares[(int)(share * (shares.Count - 1))];
    }

    private static Estimate AreaOf(DigitisedDocument section) => section.Measured[MeasureCatalogue.Area].Estimate;

    private static string Stations(List<StationComparison> compared) => compared.Count == 1
        ? Invariant($"station {compared[0].Station}")
        : "stations " + string.Join(", ", compared.SkipLast(1).Select(each => each.Station.ToString(CultureInfo.InvariantCulture)))
            + Invariant($" and {compared[^1].Station}");

    private static DigitisedPort PortOf(DemoOutcome outcome, DemoPort port) => outcome.Ports.First(each => each.Port == port);

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
