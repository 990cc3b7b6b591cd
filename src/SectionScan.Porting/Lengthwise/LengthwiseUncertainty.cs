using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Profiles;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Lengthwise;

/// <summary>How well floor, roof and height of a lengthwise shape are known, place by place: a stretch of doubtful silhouette counts where it
/// lies and nowhere else.</summary>
public sealed class LengthwiseUncertainty
{
    private readonly LengthwiseShape shape;
    private readonly WallMoves moves;

    /// <summary>Takes the moves of all causes of error.</summary>
    public LengthwiseUncertainty(LengthwiseShape shape)
    {
        ArgumentNullException.ThrowIfNull(shape);
        this.shape = shape;
        moves = new(shape.Outline, shape.ErrorSources);
    }

    /// <summary>The height at a place of the centreline, mm.</summary>
    public Estimate Height(MedialPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return new(place.HeightMm, moves.Across(Nearest(shape.FloorStretch, place.Place), Nearest(shape.RoofStretch, place.Place)));
    }

    /// <summary>The height of an end, mm. The walls are carried on to it, as sure as where they were last read.</summary>
    public Estimate Height(CutEnd end)
    {
        ArgumentNullException.ThrowIfNull(end);
        return new(end.HeightMm, moves.Across(Nearest(shape.FloorStretch, end.Floor), Nearest(shape.RoofStretch, end.Roof)));
    }

    /// <summary>u of the floor's place nearest to a point, mm.</summary>
    public double FloorMm(SectionPoint place) => moves.At(Nearest(shape.FloorStretch, place));

    /// <summary>u of the roof's place nearest to a point, mm.</summary>
    public double RoofMm(SectionPoint place) => moves.At(Nearest(shape.RoofStretch, place));

    private int Nearest(IReadOnlyList<int> stretch, SectionPoint place) => stretch.MinBy(corner => shape.Outline[corner].DistanceTo(place));
}
