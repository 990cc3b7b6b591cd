using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Jobs.Comparing;

/// <summary>The spread of many ports as one document for programs. Lengths in mm, areas in mm², angles in degrees.</summary>
/// <param name="Schema">The schema's name.</param>
/// <param name="Align">How sections were laid on each other, in the command line's word.</param>
/// <param name="Stations">The stations in order.</param>
public sealed record SpreadAnswer(string Schema, string Align, IReadOnlyList<SpreadAnswer.StationPart> Stations)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/spread/1";

    /// <summary>Makes the answer.</summary>
    public static SpreadAnswer Of(IReadOnlyList<StationSpread> stations, string align) => new(SchemaName, align, [.. stations.Select(StationPart.Of)]);

    /// <summary>One station: how far its measures and walls lie apart; U with k = 2, null when not known.</summary>
    public sealed record StationPart(
        int? Station, IReadOnlyList<string> Ports, RangePart Area, RangePart Width, RangePart Height, double MeanRangeMm, double? RangeExpandedUncertaintyMm,
        WidestPart Widest, IReadOnlyList<RegionPart> Regions)
    {
        internal static StationPart Of(StationSpread station)
        {
            var widest = station.Spread.Widest;
            return new(
                station.Station,
                [.. station.Sections.Select(each => each.Port)],
                RangePart.Of(station, MeasureCatalogue.Area),
                RangePart.Of(station, MeasureCatalogue.Width),
                RangePart.Of(station, MeasureCatalogue.Height),
                station.Spread.MeanRangeMm,
                double.IsNaN(station.RangeStandardUncertaintyMm) ? null : Estimate.CoverageFactor * station.RangeStandardUncertaintyMm,
                new(widest.RangeMm, widest.Direction.Degrees, RegionWords.Of(widest.Region), station.Sections[widest.Outermost].Port, station.Sections[widest.Innermost].Port),
                [.. station.Regions.Select(each => new RegionPart(RegionWords.Of(each.Region), each.MeanMm, each.MostMm))]);
        }
    }

    /// <summary>A measure's least and greatest value and whose they are.</summary>
    public sealed record RangePart(double Least, string LeastPort, double Greatest, string GreatestPort, double Range)
    {
        internal static RangePart Of(StationSpread station, Measure measure)
        {
            var (least, leastPort, greatest, greatestPort) = station.Of(measure);
            return new(least, leastPort, greatest, greatestPort, greatest - least);
        }
    }

    /// <summary>Where the walls lie farthest apart.</summary>
    public sealed record WidestPart(double RangeMm, double DirectionDeg, string Region, string Outermost, string Innermost);

    /// <summary>How far the walls of one side lie apart.</summary>
    public sealed record RegionPart(string Region, double MeanMm, double MostMm);
}
