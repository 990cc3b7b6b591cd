using SectionScan.Drawings.Comparisons;
using SectionScan.Drawings.Pages;
using SectionScan.Jobs.Digitising;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Jobs.Demo;

/// <summary>One station of a port against the same station of the exemplar.</summary>
/// <param name="Station">The station.</param>
/// <param name="Reference">The exemplar's section.</param>
/// <param name="Measured">The port's section.</param>
/// <param name="Result">How they differ.</param>
/// <param name="DeviationStandardUncertaintyMm">u of a deviation: both walls' u added in squares, as if nothing were common to the two.
/// Part of it is (the lens, the sheet), so that this is rather too large.</param>
public sealed record StationComparison(
    int Station, DigitisedDocument Reference, DigitisedDocument Measured, ComparisonResult Result, double DeviationStandardUncertaintyMm)
{
    /// <summary>How the sections are laid on each other: moved and turned. A tag is laid beside a slice by hand, so that neither place
    /// nor turn of a slice on the sheet means anything; what is left after the best fit is shape and size, which a porter can cut.</summary>
    public const AlignmentMethod Alignment = AlignmentMethod.BestFitWithRotation;

    // About a millimetre of a port's outline: less is a burr or a bubble of the mould, not a stretch of wall.
    private const double LeastShare = 0.01;

    /// <summary>U of a deviation, k = 2, mm: what is less than this cannot be told from no deviation.</summary>
    public double DeviationExpandedUncertaintyMm => Estimate.CoverageFactor * DeviationStandardUncertaintyMm;

    /// <summary>True when metal is surely gone over a stretch of wall that the exemplar still has.</summary>
    public bool IsBeyond => ShareBeyond >= LeastShare;

    /// <summary>True when metal is surely left over a stretch of wall.</summary>
    public bool IsShort => ShareShort >= LeastShare;

    /// <summary>The share of the outline that surely lies beyond the exemplar, 0 to 1.</summary>
    public double ShareBeyond => Result.Samples.Count(s => s.DeviationMm > DeviationExpandedUncertaintyMm) / (double)Result.Samples.Count;

    /// <summary>The share of the outline on which metal is surely left, 0 to 1.</summary>
    public double ShareShort => Result.Samples.Count(s => s.DeviationMm < -DeviationExpandedUncertaintyMm) / (double)Result.Samples.Count;

    /// <summary>The area less the exemplar's, mm², with its uncertainty.</summary>
    public Estimate AreaDifferenceMm2
    {
        get
        {
            var (reference, measured) = (Reference.Measured[MeasureCatalogue.Area].Estimate, Measured.Measured[MeasureCatalogue.Area].Estimate);
            return new(measured.Value - reference.Value, Math.Sqrt(Square(reference.StandardUncertainty) + Square(measured.StandardUncertainty)));
        }
    }

    /// <summary>Compares two sections of one station.</summary>
    public static StationComparison Of(int station, DigitisedDocument reference, DigitisedDocument measured)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        var (ours, theirs) = (measured.Document.Section, reference.Document.Section);
        var u = Math.Sqrt(
            Square(WallUncertainty.Of(ours.Outline, ours.ErrorSources)) + Square(WallUncertainty.Of(theirs.Outline, theirs.ErrorSources)));
        return new(station, reference, measured, OutlineComparison.Compare(theirs.Outline, ours.Outline, new(Alignment)), u);
    }

    /// <summary>Compares two ports at every station that both have.</summary>
    public static IReadOnlyList<StationComparison> OfPorts(DigitisedPort reference, DigitisedPort measured)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        return
        [
            .. reference.Sections.Select(section => section.Document.Section.Station).OfType<int>().Distinct().Order()
                .Where(station => measured.At(station) is not null)
                .Select(station => Of(station, reference.At(station)!, measured.At(station)!)),
        ];
    }

    /// <summary>The drawing: both outlines and the deviation round the exemplar.</summary>
    /// <param name="referenceName">What the reference is called.</param>
    /// <param name="measuredName">What the port is called.</param>
    public Page Draw(string referenceName, string measuredName)
    {
        var caption = new ComparisonCaption($"Station {Station}: {measuredName} on {referenceName}", referenceName, measuredName)
        {
            Notes =
            [
                FormattableString.Invariant($"mean {Result.MeanDeviationMm:+0.00;−0.00;0.00} mm, rms {Result.RmsDeviationMm:0.00} mm, U {DeviationExpandedUncertaintyMm:0.00} mm (k = 2)"),
            ],
        };
        return ComparisonDrawing.Build(Result.Reference, Result.Measured.Outline, Marks(), caption);
    }

    private List<DeviationMark> Marks()
    {
        var samples = Result.Samples;
        var marks = new List<DeviationMark>(samples.Count);
        for (var i = 0; i < samples.Count; i++)
        {
            // Counter-clockwise: the outward normal is the direction of travel turned to the right.
            var (before, after) = (samples[(i + samples.Count - 1) % samples.Count].Reference, samples[(i + 1) % samples.Count].Reference);
            var length = before.DistanceTo(after);
            marks.Add(new(
                samples[i].Reference, (after.YMm - before.YMm) / length, (before.XMm - after.XMm) / length, samples[i].DeviationMm));
        }

        return marks;
    }

    private static double Square(double value) => value * value;
}
