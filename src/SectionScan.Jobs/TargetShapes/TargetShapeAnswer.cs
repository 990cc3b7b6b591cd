using SectionScan.Metrology.Measures;
using SectionScan.Porting.TargetShapes;

namespace SectionScan.Jobs.TargetShapes;

/// <summary>Target shapes as one document for programs. Lengths in mm, areas in mm², angles in degrees.</summary>
/// <param name="Schema">Its schema's name.</param>
/// <param name="Targets">One for each station.</param>
public sealed record TargetShapeAnswer(string Schema, IReadOnlyList<TargetShapeAnswer.TargetPart> Targets)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/target-shape/1";

    /// <summary>Makes the answer.</summary>
    public static TargetShapeAnswer Of(IReadOnlyList<SettledTarget> targets) => new(SchemaName, [.. targets.Select(TargetPart.Of)]);

    /// <summary>One target.</summary>
    public sealed record TargetPart(
        int? Station, string Name, MeasuresPart Own, MeasuresPart Target, MeasuresPart Reference, double LargestFairingMm,
        double? MissedMeasure, TargetShapeFacts Facts, IReadOnlyList<double[]> Outline)
    {
        internal static TargetPart Of(SettledTarget target) => new(
            target.Own.Station, target.Name, MeasuresPart.Of(target.Own.Outline), MeasuresPart.Of(target.Document.Section.Outline),
            MeasuresPart.Of(target.LaidReference.Outline), target.Shape.LargestFairingMm, target.Shape.Missed, target.Document.TargetShape!,
            [.. target.Document.Section.Outline.Points.ToArray().Select(p => new[] { p.XMm, p.YMm })]);
    }

    /// <summary>Area, width and height of one outline.</summary>
    public sealed record MeasuresPart(double AreaMm2, double WidthMm, double HeightMm)
    {
        internal static MeasuresPart Of(Metrology.Outlines.Outline outline)
        {
            var facts = PolygonFacts.Of(outline);
            return new(
                MeasureCatalogue.Area.Definition(facts), MeasureCatalogue.Width.Definition(facts), MeasureCatalogue.Height.Definition(facts));
        }
    }
}
