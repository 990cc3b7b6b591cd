using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Profiles;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Lengthwise;

/// <summary>A lengthwise shape against a reference.</summary>
/// <param name="Reference">The reference, which stays.</param>
/// <param name="Measured">The measured shape where it was laid.</param>
/// <param name="Transform">How it came there.</param>
/// <param name="Floor">Along the reference's floor from face to seat: + where the measured wall lies outside (metal already gone), − where
/// metal is left, mm.</param>
/// <param name="Roof">The same along the roof.</param>
/// <param name="DeviationStandardUncertaintyMm">u of a deviation, both walls' u added in squares; NaN when not known.</param>
public sealed record LengthwiseComparison(
    LengthwiseShape Reference,
    LengthwiseShape Measured,
    SimilarityTransform Transform,
    IReadOnlyList<ProfileSample> Floor,
    IReadOnlyList<ProfileSample> Roof,
    double DeviationStandardUncertaintyMm)
{
    /// <summary>Where the measured floor stands highest above the reference's: its deviation is minus the rise.</summary>
    public ProfileSample HighestFloor => Floor.MinBy(sample => sample.DeviationMm)!;

    /// <summary>Where the measured floor lies deepest below the reference's, or least above.</summary>
    public ProfileSample DeepestFloor => Floor.MaxBy(sample => sample.DeviationMm)!;

    /// <summary>How much the floor rises in the mean, toward the roof positive, mm.</summary>
    public double MeanFloorRiseMm => -Floor.Average(sample => sample.DeviationMm);

    /// <summary>Lays the measured shape on the reference and compares.</summary>
    public static LengthwiseComparison Of(LengthwiseShape reference, LengthwiseShape measured, LengthwiseAlignment alignment)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        var transform = alignment switch
        {
            LengthwiseAlignment.Seat => EndOnEnd(reference.Seat, measured.Seat),
            LengthwiseAlignment.Face => EndOnEnd(reference.Face, measured.Face),
            _ => PatternPlacement.Start(
            [
                (reference.Face.Floor, measured.Face.Floor), (reference.Face.Roof, measured.Face.Roof), (reference.Seat.Floor, measured.Seat.Floor),
                (reference.Seat.Roof, measured.Seat.Roof),
            ]),
        };
        var laid = measured with
        {
            Outline = transform.Apply(measured.Outline),
            ErrorSources = measured.ErrorSources.Moved(transform),
            Floor = measured.Floor.Mapped(transform.Apply),
            Roof = measured.Roof.Mapped(transform.Apply),
            Face = Moved(measured.Face),
            Seat = Moved(measured.Seat),
            Centreline = [.. measured.Centreline.Select(place => place with { Place = transform.Apply(place.Place) })],
        };
        var u = reference.ErrorSources.Count == 0 || measured.ErrorSources.Count == 0
            ? double.NaN
            : double.Hypot(WallUncertainty.Of(reference.Outline, reference.ErrorSources), WallUncertainty.Of(measured.Outline, measured.ErrorSources));

        // The floor has the roof on one side of its way; outside is the other.
        var roofIsLeft = IsLeft(reference.Floor, reference.Roof.At(reference.Roof.LengthMm / 2));
        return new(
            reference, laid, transform, ProfileDeviation.Samples(reference.Floor, laid.Floor, !roofIsLeft),
            ProfileDeviation.Samples(reference.Roof, laid.Roof, roofIsLeft), u);

        CutEnd Moved(CutEnd end) => new(transform.Apply(end.Floor), transform.Apply(end.Roof));
    }

    private static bool IsLeft(Profile line, SectionPoint place)
    {
        var middle = line.At(line.LengthMm / 2);
        var (x, y) = line.DirectionAt(line.LengthMm / 2, 2);
        return ((place.YMm - middle.YMm) * x) - ((place.XMm - middle.XMm) * y) > 0;
    }

    private static SimilarityTransform EndOnEnd(CutEnd reference, CutEnd measured)
    {
        var turn = Math.IEEERemainder(DirectionOf(reference) - DirectionOf(measured), 2 * Math.PI);
        var turned = SimilarityTransform.Identity with { Turn = Angle.FromRadians(turn) };
        var (at, own) = (reference.Middle, turned.Apply(measured.Middle));
        return turned with { XMm = at.XMm - own.XMm, YMm = at.YMm - own.YMm };

        static double DirectionOf(CutEnd end) => Math.Atan2(end.Roof.YMm - end.Floor.YMm, end.Roof.XMm - end.Floor.XMm);
    }
}
