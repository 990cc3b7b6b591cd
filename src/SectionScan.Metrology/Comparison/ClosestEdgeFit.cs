using MathNet.Numerics.LinearAlgebra;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Comparison;

/// <summary>Fits an outline to another's edge by turns of matching and fitting.</summary>
/// <remarks>Iterative closest point: P. Besl, N. McKay, "A method for registration of 3-D shapes", 1992; with distances to the line
/// through the match, which lets the outline slide along it: Y. Chen, G. Medioni, "Object modelling by registration of multiple range
/// images", 1992 (both cited from memory). One Gauss-Newton step a turn.</remarks>
internal sealed class ClosestEdgeFit
{
    /// <summary>Places on the measured outline: enough that a fit of a smooth outline does not change any more.</summary>
    private const int Places = 240;

    private const int MostTurns = 60;

    /// <summary>A step that moves no place by more than this ends the fit, mm.</summary>
    private const double SmallestStepMm = 1e-7;

    /// <summary>Directions that change distances by less than this share of the strongest are left alone: a circle's rotation.</summary>
    private const double WeakestDirection = 1e-7;

    private readonly EdgeIndex reference;
    private readonly SectionPoint[] places;
    private readonly AlignmentFreedom freedom;

    public ClosestEdgeFit(Outline reference, Outline measured, AlignmentFreedom freedom)
    {
        this.reference = new(reference.Points, isClosed: true);
        places = measured.Resampled(Places);
        this.freedom = freedom;
    }

    /// <summary>Fits from a start; gives the best transform met on the way and its mean square distance.</summary>
    public (SimilarityTransform Transform, double MeanSquareMm2) From(SimilarityTransform start)
    {
        var (current, best) = (start, (Transform: start, MeanSquareMm2: double.PositiveInfinity));
        for (var turn = 0; turn < MostTurns; turn++)
        {
            var moved = Array.ConvertAll(places, current.Apply);
            var feet = Array.ConvertAll(moved, reference.Nearest);
            var meanSquare = feet.Average(foot => foot.DistanceMm * foot.DistanceMm);
            if (meanSquare < best.MeanSquareMm2)
            {
                best = (current, meanSquare);
            }

            var (pivot, reach) = Pivot(moved, current);
            var step = Step(moved, feet, pivot, reach);
            current = Composed(current, step, pivot, reach);
            if (step.L2Norm() < SmallestStepMm)
            {
                break;
            }
        }

        return best;
    }

    /// <summary>Turn and scale act about the middle of the places where both moves are free, else about the moved origin. Reach is the
    /// places' mean distance from there, so that all four parameters are lengths.</summary>
    private (SectionPoint Pivot, double ReachMm) Pivot(SectionPoint[] moved, SimilarityTransform current)
    {
        var pivot = freedom.HasFlag(AlignmentFreedom.X | AlignmentFreedom.Y)
            ? new SectionPoint(moved.Average(p => p.XMm), moved.Average(p => p.YMm))
            : new SectionPoint(current.XMm, current.YMm);
        return (pivot, moved.Average(p => p.DistanceTo(pivot)));
    }

    /// <summary>The Gauss-Newton step (x, y, turn, scale), each in mm; fixed ones are zero.</summary>
    private Vector<double> Step(SectionPoint[] moved, EdgeFoot[] feet, SectionPoint pivot, double reach)
    {
        var normal = Matrix<double>.Build.Dense(4, 4);
        var gradient = Vector<double>.Build.Dense(4);
        Span<double> row = stackalloc double[4];
        for (var i = 0; i < moved.Length; i++)
        {
            var (nx, ny) = reference.NormalAt(feet[i], moved[i]);
            var residual = (nx * (moved[i].XMm - feet[i].Point.XMm)) + (ny * (moved[i].YMm - feet[i].Point.YMm));
            var (x, y) = ((moved[i].XMm - pivot.XMm) / reach, (moved[i].YMm - pivot.YMm) / reach);
            row[0] = IsFree(AlignmentFreedom.X) * nx;
            row[1] = IsFree(AlignmentFreedom.Y) * ny;
            row[2] = IsFree(AlignmentFreedom.Rotation) * ((ny * x) - (nx * y));
            row[3] = IsFree(AlignmentFreedom.Scale) * ((nx * x) + (ny * y));
            for (var a = 0; a < 4; a++)
            {
                gradient[a] -= row[a] * residual;
                for (var b = 0; b < 4; b++)
                {
                    normal[a, b] += row[a] * row[b];
                }
            }
        }

        var eigen = normal.Evd(Symmetricity.Symmetric);
        var step = Vector<double>.Build.Dense(4);
        for (var k = 0; k < 4; k++)
        {
            var strength = eigen.EigenValues[k].Real;
            if (strength > WeakestDirection * eigen.EigenValues[3].Real)
            {
                var direction = eigen.EigenVectors.Column(k);
                step += direction * (direction.DotProduct(gradient) / strength);
            }
        }

        return step;
    }

    private int IsFree(AlignmentFreedom one) => freedom.HasFlag(one) ? 1 : 0;

    private static SimilarityTransform Composed(SimilarityTransform current, Vector<double> step, SectionPoint pivot, double reach)
    {
        // A turn is bounded: beyond a quarter of a radian the linear step means nothing.
        var turn = Math.Clamp(step[2] / reach, -0.25, 0.25);
        var scale = Math.Exp(Math.Clamp(step[3] / reach, -0.25, 0.25));
        var (sin, cos) = Math.SinCos(turn);
        var (x, y) = (current.XMm - pivot.XMm, current.YMm - pivot.YMm);
        return current with
        {
            XMm = pivot.XMm + step[0] + (scale * ((x * cos) - (y * sin))),
            YMm = pivot.YMm + step[1] + (scale * ((x * sin) + (y * cos))),
            Turn = current.Turn + Angle.FromRadians(turn),
            Scale = current.Scale * scale,
        };
    }
}
