using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Digitising;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Jobs.Demo;

/// <summary>One station of a port against the same station of the exemplar.</summary>
/// <param name="Station">The station.</param>
/// <param name="Reference">The exemplar's section.</param>
/// <param name="Measured">The port's section.</param>
/// <param name="Comparison">How they differ.</param>
public sealed record StationComparison(int Station, DigitisedDocument Reference, DigitisedDocument Measured, SectionComparison Comparison)
{
    /// <summary>How the sections are laid on each other: moved and turned. A tag is laid beside a slice by hand, so that neither place
    /// nor turn of a slice on the sheet means anything; what is left after the best fit is shape and size, which a porter can cut.</summary>
    public const AlignmentMethod Alignment = AlignmentMethod.BestFitWithRotation;

    // About a millimetre of a port's outline: less is a burr or a bubble of the mould, not a stretch of wall.
    private const double LeastShare = 0.01;

    /// <summary>U of a deviation, k = 2, mm: what is less than this cannot be told from no deviation.</summary>
    public double DeviationExpandedUncertaintyMm => Comparison.DeviationExpandedUncertaintyMm;

    /// <summary>The figures of the comparison.</summary>
    public ComparisonResult Result => Comparison.Result;

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

    /// <summary>Compares two ports at every station that both have.</summary>
    public static IReadOnlyList<StationComparison> OfPorts(DigitisedPort reference, DigitisedPort measured)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        return
        [
            .. reference.Sections.Select(section => section.Document.Section.Station).OfType<int>().Distinct().Order()
                .Where(station => measured.At(station) is not null)
                .Select(station => Of(station, reference, measured)),
        ];
    }

    /// <summary>Compares one station of two ports.</summary>
    /// <param name="station">The station.</param>
    /// <param name="referenceName">The reference's name.</param>
    /// <param name="reference">The reference's section.</param>
    /// <param name="measuredName">The measured port's name.</param>
    /// <param name="measured">Its section.</param>
    /// <param name="alignment">How they are laid on each other; null for <see cref="Alignment"/>.</param>
    public static StationComparison Of(
        int station, string referenceName, DigitisedDocument reference, string measuredName, DigitisedDocument measured, AlignmentChoice? alignment = null)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        var comparison = SectionComparison.With(
            SectionInput.Of(referenceName, reference.Document),
            SectionInput.Of(FormattableString.Invariant($"{measuredName}, station {station}"), measured.Document),
            alignment ?? AlignmentChoice.Of(Alignment, isMirrored: false)).ValueOrThrow();
        return new(station, reference, measured, comparison);
    }

    private static StationComparison Of(int station, DigitisedPort reference, DigitisedPort measured) =>
        Of(station, reference.Port.Name, reference.At(station)!, measured.Port.Name, measured.At(station)!);

    private static double Square(double value) => value * value;
}
