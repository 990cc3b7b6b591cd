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
/// <param name="Uncertainty">u of each shape place by place; null when that of one is not known.</param>
public sealed record LengthwiseComparison(
    LengthwiseShape Reference,
    LengthwiseShape Measured,
    SimilarityTransform Transform,
    IReadOnlyList<ProfileSample> Floor,
    IReadOnlyList<ProfileSample> Roof,
    (LengthwiseUncertainty Reference, LengthwiseUncertainty Measured)? Uncertainty)
{
    /// <summary>Where the measured floor stands highest above the reference's: its deviation is minus the rise.</summary>
    public ProfileSample HighestFloor => Floor.MinBy(sample => sample.DeviationMm)!;

    /// <summary>Where the measured floor lies deepest below the reference's, or least above.</summary>
    public ProfileSample DeepestFloor => Floor.MaxBy(sample => sample.DeviationMm)!;

    /// <summary>How much the floor rises in the mean, toward the roof positive, mm.</summary>
    public double MeanFloorRiseMm => -Floor.Average(sample => sample.DeviationMm);

    /// <summary>u of the floor's deviation at one of its places, both walls' u there added in squares, mm; NaN when not known.</summary>
    public double FloorStandardUncertaintyMm(ProfileSample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        return Uncertainty is { } u ? double.Hypot(u.Reference.FloorMm(sample.Place), u.Measured.FloorMm(sample.Place)) : double.NaN;
    }

    /// <summary>The same along the roof.</summary>
    public double RoofStandardUncertaintyMm(ProfileSample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        return Uncertainty is { } u ? double.Hypot(u.Reference.RoofMm(sample.Place), u.Measured.RoofMm(sample.Place)) : double.NaN;
    }

    /// <summary>u of a deviation where the edge is as sure as usual: the median over floor and roof, mm; NaN when not known.</summary>
    public double UsualStandardUncertaintyMm
    {
        get
        {
            var all = Floor.Select(FloorStandardUncertaintyMm).Concat(Roof.Select(RoofStandardUncertaintyMm)).Order().ToList();
            return all.Count == 0 ? double.NaN : all[all.Count / 2];
        }
    }

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
        (LengthwiseUncertainty, LengthwiseUncertainty)? u = reference.ErrorSources.Count == 0 || laid.ErrorSources.Count == 0 ? null : (new(reference), new(laid));

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
