using MathNet.Numerics.LinearAlgebra;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Comparison;

/// <summary>Fits an outline to another's edge by turns of matching and fitting.</summary>
/// <remarks>Iterative closest point: P. Besl, N. McKay, "A method for registration of 3-D shapes", 1992; with distances to the line
/// through the match, which lets the outline slide along it: Y. Chen, G. Medioni, "Object modelling by registration of multiple range
/// images", 1992 (both cited from memory). One Gauss-Newton step a turn. Distances are signed, outward positive, so that an even
/// offset can be fitted with them; robust losses by weights renewed each turn: see <see cref="FitWeights"/>.</remarks>
internal sealed class ClosestEdgeFit
{
    /// <summary>Places on the measured outline: enough that a fit of a smooth outline does not change any more.</summary>
    private const int Places = 240;

    private const int MostTurns = 60;
    private const int Columns = 5;
    private const int OffsetColumn = 4;
    private const int TurnColumn = 2;

    /// <summary>How well a tag laid by hand tells up, standard uncertainty in degrees. Assumption; tags are seen up to 5° off.</summary>
    private const double HandLaidDegrees = 5;

    /// <summary>Two ports differ smoothly: of all places only about so many tell something of their own. Assumption.</summary>
    private const double Independent = 10;

    /// <summary>A step that moves no place by more than this ends the fit, mm.</summary>
    private const double SmallestStepMm = 1e-7;

    /// <summary>Directions that change distances by less than this share of the strongest are left alone: a circle's rotation.</summary>
    private const double WeakestDirection = 1e-7;

    private readonly EdgeIndex reference;
    private readonly SectionPoint[] places;
    private readonly AlignmentFreedom freedom;
    private readonly FitWeights weights;
    private readonly bool hasEvenOffset;

    public ClosestEdgeFit(Outline reference, Outline measured, FitRule rule)
    {
        (freedom, weights, hasEvenOffset) = (rule.Freedom, new(rule.Loss), rule.HasEvenOffset);
        this.reference = new(reference.Points, isClosed: true);
        places = measured.Resampled(Places);
    }

    /// <summary>Fits from a start; gives the best transform met on the way, its even offset and its loss: the mean square distance for
    /// least squares. Losses of one scale can be compared with one another.</summary>
    /// <param name="start">Where to begin.</param>
    /// <param name="scaleMm">The spread of honest distances, mm, that a robust loss judges by.</param>
    /// <param name="level">The turn at which the section lies as its up direction was given.</param>
    public FitOutcome From(SimilarityTransform start, double scaleMm, Angle level)
    {
        var (current, offset, best) = (start, double.NaN, new FitOutcome(start, 0, double.PositiveInfinity));
        for (var turn = 0; turn < MostTurns; turn++)
        {
            var moved = Array.ConvertAll(places, current.Apply);
            var feet = Array.ConvertAll(moved, reference.Nearest);
            var (normals, distances) = Signed(moved, feet);
            offset = !hasEvenOffset ? 0 : double.IsNaN(offset) ? FitWeights.Median(distances) : offset;
            var residuals = Array.ConvertAll(distances, distance => distance - offset);
            var loss = weights.Loss(residuals, scaleMm);
            if (loss < best.Loss || !weights.IsClassical)
            {
                best = new(current, offset, loss);
            }

            var (pivot, reach) = Pivot(moved, current);
            var step = Step(moved, normals, residuals, weights.Of(residuals, scaleMm), (pivot, reach), Hold(scaleMm, reach, current.Turn - level));
            current = Composed(current, step, pivot, reach);
            offset += step[OffsetColumn];
            if (step.L2Norm() < SmallestStepMm)
            {
                break;
            }
        }

        return best;
    }

    /// <summary>The spread of honest distances where a transform puts the outline, mm.</summary>
    public double ScaleAt(SimilarityTransform transform)
    {
        var moved = Array.ConvertAll(places, transform.Apply);
        var distances = Signed(moved, Array.ConvertAll(moved, reference.Nearest)).Distances;
        var middle = hasEvenOffset ? FitWeights.Median(distances) : 0;
        return FitWeights.ScaleOf(Array.ConvertAll(distances, distance => distance - middle));
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

    /// <summary>The Gauss-Newton step (x, y, turn, scale, even offset), each in mm; fixed ones are zero.</summary>
    private Vector<double> Step(
        SectionPoint[] moved, (double X, double Y)[] normals, double[] residuals, double[] weight, (SectionPoint Pivot, double Reach) about,
        (double Strength, double TurnMm) hold)
    {
        var (pivot, reach) = about;
        var normal = Matrix<double>.Build.Dense(Columns, Columns);
        var gradient = Vector<double>.Build.Dense(Columns);
        Span<double> row = stackalloc double[Columns];
        for (var i = 0; i < moved.Length; i++)
        {
            var (nx, ny) = normals[i];
            var (x, y) = ((moved[i].XMm - pivot.XMm) / reach, (moved[i].YMm - pivot.YMm) / reach);
            row[0] = IsFree(AlignmentFreedom.X) * nx;
            row[1] = IsFree(AlignmentFreedom.Y) * ny;
            row[2] = IsFree(AlignmentFreedom.Rotation) * ((ny * x) - (nx * y));
            row[3] = IsFree(AlignmentFreedom.Scale) * ((nx * x) + (ny * y));
            row[OffsetColumn] = hasEvenOffset ? -1 : 0;
            for (var a = 0; a < Columns; a++)
            {
                gradient[a] -= weight[i] * row[a] * residuals[i];
                for (var b = 0; b < Columns; b++)
                {
                    normal[a, b] += weight[i] * row[a] * row[b];
                }
            }
        }

        normal[TurnColumn, TurnColumn] += hold.Strength;
        gradient[TurnColumn] -= hold.Strength * hold.TurnMm;
        var eigen = normal.Evd(Symmetricity.Symmetric);
        var step = Vector<double>.Build.Dense(Columns);
        for (var k = 0; k < Columns; k++)
        {
            var strength = eigen.EigenValues[k].Real;
            if (strength > WeakestDirection * eigen.EigenValues[Columns - 1].Real)
            {
                var direction = eigen.EigenVectors.Column(k);
                step += direction * (direction.DotProduct(gradient) / strength);
            }
        }

        return step;
    }

    /// <summary>How strongly a turn away from the given up direction is held back, and how far it is, mm at the reach. Where the edges
    /// tell the turn this changes nothing to speak of; a nearly round section it keeps from lying down on its side. Only with robust
    /// losses: least squares stays the classical fit.</summary>
    private (double Strength, double TurnMm) Hold(double scaleMm, double reachMm, Angle turn) =>
        weights.IsClassical || !freedom.HasFlag(AlignmentFreedom.Rotation)
            ? (0, 0)
            : (Places / Independent * Math.Pow(scaleMm / (Angle.FromDegrees(HandLaidDegrees).Radians * reachMm), 2), turn.Radians * reachMm);

    private int IsFree(AlignmentFreedom one) => freedom.HasFlag(one) ? 1 : 0;

    /// <summary>Unit normals outward from the edge to each place, and how far each place lies along them: negative inside.</summary>
    private ((double X, double Y)[] Normals, double[] Distances) Signed(SectionPoint[] moved, EdgeFoot[] feet)
    {
        var (normals, distances) = (new (double X, double Y)[moved.Length], new double[moved.Length]);
        for (var i = 0; i < moved.Length; i++)
        {
            var (foot, place) = (feet[i], moved[i]);
            var (from, to) = (reference.From(foot.Edge), reference.To(foot.Edge));
            var (x, y) = reference.NormalAt(foot, place);
            var sign = (x * (to.YMm - from.YMm)) + (y * (from.XMm - to.XMm)) < 0 ? -1 : 1;
            (normals[i], distances[i]) = ((sign * x, sign * y), sign * foot.DistanceMm);
        }

        return (normals, distances);
    }

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
