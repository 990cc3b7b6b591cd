using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Comparison;

/// <summary>Compares a measured outline with a reference.</summary>
public static class OutlineComparison
{
    /// <summary>Lays the measured outline on the reference as the options say, then compares.</summary>
    public static ComparisonResult Compare(Outline reference, Outline measured, ComparisonOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return Compare(
            reference, OutlineAlignment.Align(reference, measured, options.Alignment, options.IsMirrored), options.SpacingMm);
    }

    /// <summary>Compares an outline that has been laid on the reference already.</summary>
    /// <param name="reference">The reference.</param>
    /// <param name="measured">The measured outline where it lies on the reference.</param>
    /// <param name="spacingMm">The spacing of the places at which the deviation is taken, mm.</param>
    public static ComparisonResult Compare(Outline reference, AlignedOutline measured, double spacingMm = 0.25)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        var outline = measured.Outline;
        return new(
            reference,
            measured,
            Samples(reference, outline, spacingMm),
            PolygonMoments.SignedAreaMm2(outline.Points) - PolygonMoments.SignedAreaMm2(reference.Points),
            AreaOverlap.Of(reference, outline).IntersectionOverUnion,
            HausdorffDistance.Between(reference, outline),
            HausdorffDistance.Percentile(reference, outline),
            FrechetDistance.BetweenOutlines(reference, outline),
            ProcrustesFit.OfOutlines(reference, outline));
    }

    /// <summary>The signed normal deviation at even steps along the reference.</summary>
    /// <param name="reference">The reference.</param>
    /// <param name="measured">The measured outline in the reference's frame.</param>
    /// <param name="spacingMm">The spacing of the places, mm.</param>
    public static IReadOnlyList<DeviationSample> Samples(Outline reference, Outline measured, double spacingMm = 0.25)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        var centroid = PolygonMoments.Of(reference.Points).Centroid;
        var edges = new EdgeIndex(reference.Points, isClosed: true);
        var deviation = new SignedDeviation(measured);
        return Array.ConvertAll(OutlineSampling.Even(reference, spacingMm), Sample);

        DeviationSample Sample(SectionPoint place)
        {
            var edge = edges.Nearest(place).Edge;
            var (from, to) = (edges.From(edge), edges.To(edge));
            var length = from.DistanceTo(to);
            var (millimetres, met) = deviation.At(place, (to.YMm - from.YMm) / length, (from.XMm - to.XMm) / length);
            var direction = OutlineRegions.DirectionOf(place, centroid);
            return new(place, met, direction, OutlineRegions.In(direction), millimetres);
        }
    }
}
