using System.Globalization;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Summaries;
using SectionScan.Jobs.Digitising;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Jobs.Demo;

/// <summary>The tables of the demonstration's page. Each value stands with its expanded uncertainty (k = 2).</summary>
internal static class DemoTables
{
    /// <summary>The area of each port at each station.</summary>
    public static TableBlock Areas(DigitisedPort exemplar, DigitisedPort asCast, DigitisedPort finished, IReadOnlyList<StationComparison> compared) => new(
        "Area in mm², station by station, with the flow.",
        ["Station", "Exemplar", "As cast", "Finished", "Finished − exemplar", "in %"],
        [
            .. compared.Select(each => (IReadOnlyList<string>)
            [
                Number(each.Station), Area(exemplar.At(each.Station)), Area(asCast.At(each.Station)), Area(finished.At(each.Station)),
                Invariant($"{each.AreaDifferenceMm2.Value:+0.0;−0.0;0.0} ± {each.AreaDifferenceMm2.ExpandedUncertainty:0.0}"),
                Invariant($"{100 * each.AreaDifferenceMm2.Value / AreaOf(each.Reference).Value:+0.0;−0.0;0.0}"),
            ]),
        ]);

    /// <summary>Width and height of each port at each station.</summary>
    public static TableBlock Sizes(DigitisedPort exemplar, DigitisedPort asCast, DigitisedPort finished, IReadOnlyList<StationComparison> compared) => new(
        "Width × height in mm along the tag's axes (a tag laid askew turns them); U of a width is " + Invariant($"{WidthUncertainties(exemplar, asCast, finished).Min():0.00} to {WidthUncertainties(exemplar, asCast, finished).Max():0.00}") + " mm.",
        ["Station", "Exemplar", "As cast", "Finished"],
        [
            .. compared.Select(each => (IReadOnlyList<string>)
            [
                Number(each.Station), Size(exemplar.At(each.Station)), Size(asCast.At(each.Station)), Size(finished.At(each.Station)),
            ]),
        ]);

    /// <summary>Where a port differs from the exemplar.</summary>
    public static TableBlock Deviations(string caption, IReadOnlyList<StationComparison> compared) => new(
        caption,
        ["Station", "Mean", "Rms", "Lowest", "there", "Highest", "there", "U", "Reads as"],
        [
            .. compared.Select(each => (IReadOnlyList<string>)
            [
                Number(each.Station), Signed(each.Result.MeanDeviationMm), Invariant($"{each.Result.RmsDeviationMm:0.00}"),
                Signed(each.Result.Lowest.DeviationMm), Place(each.Result.Lowest),
                Signed(each.Result.Highest.DeviationMm), Place(each.Result.Highest),
                Invariant($"{each.DeviationExpandedUncertaintyMm:0.00}"), Reading(each),
            ]),
        ]);

    /// <summary>The openings of the sawn casting.</summary>
    public static TableBlock Openings(DigitisedPort sawn) => new(
        "Openings in the sawn face, from left to right.",
        ["Opening", "Area", "Width", "Height", "Hydraulic diameter"],
        [
            .. sawn.Sections.Select((section, i) => (IReadOnlyList<string>)
            [
                Number(i + 1), MeasureText.Area(AreaOf(section), LengthUnit.Millimetre), Length(section, MeasureCatalogue.Width),
                Length(section, MeasureCatalogue.Height), Length(section, MeasureCatalogue.HydraulicDiameter),
            ]),
        ]);

    /// <summary>What the library found.</summary>
    public static TableBlock Found(LibraryAnswer answer) => new(
        $"Nearest shapes in the library to station {Number(answer.Asked.Station)} of the finished port, turned as suits best.",
        ["Entry", "Distance, mm", "Area, mm²"],
        [
            .. answer.Found.Select(found => (IReadOnlyList<string>)
            [
                found.Entry.Place.Path, Invariant($"{found.Likeness.DistanceMm:0.000}"), Invariant($"{found.Entry.AreaMm2:0.0}"),
            ]),
        ]);

    /// <summary>A region with its direction: "right wall, −12°".</summary>
    public static string Place(DeviationSample sample) =>
        Invariant($"{RegionWords.Of(sample.Region)}, {sample.Direction.Degrees:0;−0;0}°");

    /// <summary>What a comparison says in words.</summary>
    public static string Reading(StationComparison each)
    {
        var parts = new List<string>();
        if (each.IsBeyond)
        {
            parts.Add(Invariant($"gone too far over {100 * each.ShareBeyond:0}\u00A0% of the outline"));
        }

        if (each.IsShort)
        {
            parts.Add(Invariant($"metal left over {100 * each.ShareShort:0}\u00A0%"));
        }

        return parts.Count == 0 ? "no difference that can be told" : string.Join("; ", parts);
    }

    private static Estimate AreaOf(DigitisedDocument section) => section.Measured[MeasureCatalogue.Area].Estimate;

    private static string Area(DigitisedDocument? section) =>
        section is null ? string.Empty : Invariant($"{AreaOf(section).Value:0.0} ± {AreaOf(section).ExpandedUncertainty:0.0}");

    private static string Size(DigitisedDocument? section) => section is null
        ? string.Empty
        : Invariant($"{section.Measured[MeasureCatalogue.Width].Estimate.Value:0.00} × {section.Measured[MeasureCatalogue.Height].Estimate.Value:0.00}");

    private static string Length(DigitisedDocument section, Measure measure) =>
        MeasureText.Length(section.Measured[measure].Estimate, LengthUnit.Millimetre);

    private static string Signed(double value) => Invariant($"{value:+0.00;−0.00;0.00}");

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static IEnumerable<double> WidthUncertainties(params DigitisedPort[] ports) =>
        ports.SelectMany(port => port.Sections).Select(each => each.Measured[MeasureCatalogue.Width].Estimate.ExpandedUncertainty);
}
