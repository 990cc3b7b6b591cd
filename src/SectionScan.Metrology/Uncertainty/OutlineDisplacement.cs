using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>Moves the corners of one outline as causes of error would. All moves are taken from the outline as it stands, so that
/// several can be added.</summary>
internal sealed class OutlineDisplacement
{
    /// <summary>A corner's move is at most this many times the move of its sides: beyond a turn of 120° a parallel offset runs away.</summary>
    private const double LongestMitre = 2;

    private readonly SectionPoint[] corners;
    private readonly (double X, double Y)[] normals;
    private readonly SectionPoint centroid;

    public OutlineDisplacement(Outline outline)
    {
        corners = outline.Points.ToArray();
        normals = Normals(corners);
        centroid = PolygonMoments.Of(corners).Centroid;
        LengthsMm = new double[corners.Length];
        for (var i = 0; i < corners.Length; i++)
        {
            LengthsMm[i] = (outline[i - 1].DistanceTo(corners[i]) + corners[i].DistanceTo(outline[i + 1])) / 2;
        }

        PerimeterMm = LengthsMm.Sum();
    }

    public ReadOnlySpan<SectionPoint> Corners => corners;

    /// <summary>The length of outline that each corner stands for, mm.</summary>
    public double[] LengthsMm { get; }

    public double PerimeterMm { get; }

    /// <summary>The length over which a random move is alike: never less than the corners' spacing, because a corner takes half of
    /// each of its sides along.</summary>
    public double CorrelationLengthMm(RandomEdgeEffect effect) => Math.Max(effect.CorrelationLengthMm, PerimeterMm / corners.Length);

    /// <summary>Adds <paramref name="factor"/> times an effect that moves the whole outline to corners that may have moved already.</summary>
    public void Add(OutlineEffect effect, double factor, SectionPoint[] moved)
    {
        switch (effect)
        {
            case LinearEffect linear:
                for (var i = 0; i < moved.Length; i++)
                {
                    var (x, y) = (corners[i].XMm - centroid.XMm, corners[i].YMm - centroid.YMm);
                    moved[i] = new(
                        moved[i].XMm + (factor * ((linear.XX * x) + (linear.XY * y))),
                        moved[i].YMm + (factor * ((linear.YX * x) + (linear.YY * y))));
                }

                break;
            case NormalOffsetEffect offset:
                for (var i = 0; i < moved.Length; i++)
                {
                    MoveAlongNormal(i, factor * offset.OffsetMm, moved);
                }

                break;
            case FacingOffsetEffect facing:
                for (var i = 0; i < moved.Length; i++)
                {
                    var squarely = Math.Max(0, (normals[i].X * facing.DirectionX) + (normals[i].Y * facing.DirectionY));
                    MoveAlongNormal(i, factor * facing.OffsetMm * squarely, moved);
                }

                break;
            case LocalOffsetEffect local:
                for (var i = 0; i < moved.Length; i++)
                {
                    var near = corners[i].DistanceTo(new(local.XMm, local.YMm)) / local.RadiusMm;
                    if (near < 1)
                    {
                        MoveAlongNormal(i, factor * local.OffsetMm * (1 - Math.Pow(near, 4)), moved);
                    }
                }

                break;
            default:
                throw new ArgumentException($"{effect.GetType().Name} does not move an outline as a whole.", nameof(effect));
        }
    }

    public void MoveAlongNormal(int i, double lengthMm, SectionPoint[] moved) =>
        moved[i] = new(moved[i].XMm + (lengthMm * normals[i].X), moved[i].YMm + (lengthMm * normals[i].Y));

    /// <summary>Outward along the bisector, as long as a parallel offset of both sides by 1 makes it.</summary>
    private static (double X, double Y)[] Normals(ReadOnlySpan<SectionPoint> corners)
    {
        var sides = new (double X, double Y)[corners.Length];
        for (var i = 0; i < corners.Length; i++)
        {
            var (from, to) = (corners[i], corners[i + 1 == corners.Length ? 0 : i + 1]);
            var length = from.DistanceTo(to);
            sides[i] = ((to.YMm - from.YMm) / length, (from.XMm - to.XMm) / length);
        }

        var normals = new (double X, double Y)[corners.Length];
        for (var i = 0; i < corners.Length; i++)
        {
            var (before, after) = (sides[i == 0 ? corners.Length - 1 : i - 1], sides[i]);
            var (x, y) = (before.X + after.X, before.Y + after.Y);

            // |before + after| = 2·cos(turn/2); the offset corner lies at 1/cos(turn/2) along the bisector.
            var size = Math.Sqrt((x * x) + (y * y));
            var mitre = Math.Min(2 / size, LongestMitre) / size;
            normals[i] = size < 1e-9 ? before : (x * mitre, y * mitre);
        }

        return normals;
    }
}
