using MathNet.Numerics.LinearAlgebra;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Comparison;

/// <summary>Lays a pattern of outlines, moved as one and neither bent nor scaled, on as many others.</summary>
/// <remarks>As <see cref="ClosestEdgeFit"/>, by turns of matching and fitting with distances to the line through the match, but for all
/// outlines together, and each step is the best one within the limits (<see cref="LimitedStep"/>).</remarks>
public static class PatternPlacement
{
    private const int PlacesOfOutline = 240;
    private const int MostTurns = 80;
    private const double SmallestStepMm = 1e-6;
    private const double LargestTurnOfStep = 0.25;

    /// <summary>A limit nearer than this is none: a pivot's play, and the width of the circle that a step is kept in, mm.</summary>
    private const double LeastPlayMm = 1e-4;

    /// <summary>Turns change this share of the strongest direction at least: a circle's turn stays where it is.</summary>
    private const double LeastStrength = 1e-7;

    /// <summary>Turns from which a pattern of one outline that is free to turn starts, degrees.</summary>
    private static readonly double[] StartTurnsDegrees = [0, 7, -7, 15, -15];

    /// <summary>Lays the pattern to the least root mean square distance of its edges.</summary>
    /// <param name="pairs">One pair or more.</param>
    /// <param name="start">Where the pattern starts; it keeps scale and side.</param>
    /// <param name="limits">How far it may move from there. At the start all <see cref="PlacementLimits.Plays"/> are kept.</param>
    /// <exception cref="ArgumentException">No pairs, or the start breaks a limit.</exception>
    public static PlacedPattern Fit(IReadOnlyList<OutlinePair> pairs, SimilarityTransform start, PlacementLimits limits)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(limits);
        if (pairs.Count == 0)
        {
            throw new ArgumentException("A pattern has one pair of outlines or more.", nameof(pairs));
        }

        var pattern = new Pattern(pairs, start, limits);
        if (!pattern.Keeps(start))
        {
            throw new ArgumentException("The start must keep the limits.", nameof(start));
        }

        double[] turns = pairs.Count == 1 && limits.IsFree ? StartTurnsDegrees : [0];
        return turns.Select(turn => pattern.From(pattern.StartTurned(Angle.FromDegrees(turn)))).MinBy(placed => placed.RmsMm)!;
    }

    /// <summary>The move and turn that bring places nearest to fixed ones, by the sum of squares. One place alone is not turned.</summary>
    /// <param name="places">Pairs of a fixed place and a place of the pattern, one or more.</param>
    /// <param name="isMirrored">Exchange the pattern's left and right first.</param>
    /// <remarks>Least squares of a rigid motion in the plane, in closed form (Procrustes; I. Dryden, K. Mardia, "Statistical Shape
    /// Analysis", 1998, cited from memory).</remarks>
    public static SimilarityTransform Start(IReadOnlyList<(SectionPoint Fixed, SectionPoint Moved)> places, bool isMirrored = false)
    {
        ArgumentNullException.ThrowIfNull(places);
        var own = places.Select(p => (p.Fixed, Moved: isMirrored ? new SectionPoint(-p.Moved.XMm, p.Moved.YMm) : p.Moved)).ToList();
        var to = new SectionPoint(own.Average(p => p.Fixed.XMm), own.Average(p => p.Fixed.YMm));
        var from = new SectionPoint(own.Average(p => p.Moved.XMm), own.Average(p => p.Moved.YMm));
        var (cross, dot) = (0.0, 0.0);
        foreach (var (target, moved) in own)
        {
            var (x, y, u, v) = (moved.XMm - from.XMm, moved.YMm - from.YMm, target.XMm - to.XMm, target.YMm - to.YMm);
            cross += (x * v) - (y * u);
            dot += (x * u) + (y * v);
        }

        var turn = own.Count > 1 && double.Hypot(cross, dot) > 1e-9 ? Math.Atan2(cross, dot) : 0;
        var (sin, cos) = Math.SinCos(turn);
        return new(
            to.XMm - (from.XMm * cos) + (from.YMm * sin), to.YMm - (from.XMm * sin) - (from.YMm * cos), Angle.FromRadians(turn), 1, isMirrored);
    }

    private sealed class Pattern
    {
        private readonly EdgeIndex[] edges;
        private readonly SectionPoint[][] places;
        private readonly SectionPoint middle;
        private readonly SectionPoint centre;
        private readonly double reach;
        private readonly SimilarityTransform start;
        private readonly PlacementLimits limits;

        public Pattern(IReadOnlyList<OutlinePair> pairs, SimilarityTransform start, PlacementLimits limits)
        {
            edges = [.. pairs.Select(pair => new EdgeIndex(pair.Fixed.Points, isClosed: true))];
            places = [.. pairs.Select(pair => pair.Moved.Resampled(PlacesOfOutline))];
            var all = places.SelectMany(p => p).ToList();
            middle = new(all.Average(p => p.XMm), all.Average(p => p.YMm));

            // Steps turn about the places that must stay, so that a turn does not move a lone one.
            centre = limits.Plays.Count == 0
                ? middle
                : new(limits.Plays.Average(play => play.Moved.XMm), limits.Plays.Average(play => play.Moved.YMm));
            reach = all.Average(p => p.DistanceTo(centre));
            (this.start, this.limits) = (start, limits);
        }

        public SimilarityTransform StartTurned(Angle turn) => Composed(start, Vector<double>.Build.DenseOfArray([0, 0, turn.Radians * reach]));

        public bool Keeps(SimilarityTransform transform) => LimitsAt(transform).All(limit => limit.Start.L2Norm() < limit.Reach);

        public PlacedPattern From(SimilarityTransform from)
        {
            var (current, best, bestMeanSquare) = (from, from, double.PositiveInfinity);
            for (var turn = 0; turn < MostTurns; turn++)
            {
                var (h, g, meanSquare) = Quadratic(current);
                if (meanSquare < bestMeanSquare)
                {
                    (best, bestMeanSquare) = (current, meanSquare);
                }

                var step = LimitedStep.Least(h, g, LimitsAt(current));
                var next = Composed(current, step);
                for (var halvings = 0; halvings < 40 && !Keeps(next); halvings++)
                {
                    step /= 2;
                    next = Composed(current, step);
                }

                if (!Keeps(next) || step.L2Norm() < SmallestStepMm)
                {
                    break;
                }

                current = next;
            }

            var (to, was) = (best.Apply(middle), start.Apply(middle));
            return new(
                best, to, to.XMm - was.XMm, to.YMm - was.YMm, best.Turn - start.Turn, Math.Sqrt(bestMeanSquare),
                LimitsAt(best).Any(limit => limit.Start.L2Norm() > limit.Reach - Math.Max(1e-3, 3 * LeastPlayMm)));
        }

        /// <summary>Half the mean square distance as a quadratic of (x, y, turn · reach) about the moved centre.</summary>
        private (Matrix<double> H, Vector<double> G, double MeanSquareMm2) Quadratic(SimilarityTransform current)
        {
            var h = Matrix<double>.Build.Dense(3, 3);
            var g = Vector<double>.Build.Dense(3);
            var (pivot, count, squares) = (current.Apply(centre), places.Sum(p => p.Length), 0.0);
            Span<double> row = stackalloc double[3];
            for (var k = 0; k < places.Length; k++)
            {
                foreach (var place in places[k])
                {
                    var moved = current.Apply(place);
                    var foot = edges[k].Nearest(moved);
                    var (nx, ny) = edges[k].NormalAt(foot, moved);
                    var residual = (nx * (moved.XMm - foot.Point.XMm)) + (ny * (moved.YMm - foot.Point.YMm));
                    (row[0], row[1]) = (nx, ny);
                    row[2] = ((ny * (moved.XMm - pivot.XMm)) - (nx * (moved.YMm - pivot.YMm))) / reach;
                    squares += foot.DistanceMm * foot.DistanceMm;
                    for (var a = 0; a < 3; a++)
                    {
                        g[a] -= row[a] * residual / count;
                        for (var b = 0; b < 3; b++)
                        {
                            h[a, b] += row[a] * row[b] / count;
                        }
                    }
                }
            }

            var ridge = LeastStrength * h.Trace();
            for (var a = 0; a < 3; a++)
            {
                h[a, a] += ridge;
            }

            return (h, g, squares / count);
        }

        private List<LimitedStep.Limit> LimitsAt(SimilarityTransform current)
        {
            var found = new List<LimitedStep.Limit>();
            var pivot = current.Apply(centre);
            if (limits.MostShiftMm is { } shift)
            {
                var (at, was) = (current.Apply(middle), start.Apply(middle));
                found.Add(Circle(new(at.XMm - was.XMm, at.YMm - was.YMm), at.XMm - pivot.XMm, at.YMm - pivot.YMm, shift));
            }

            if (limits.MostTurn is { } turn)
            {
                found.Add(new(
                    Vector<double>.Build.DenseOfArray([(current.Turn - start.Turn).Radians * reach]),
                    Matrix<double>.Build.DenseOfArray(new double[,] { { 0, 0, 1 } }),
                    Math.Max(turn.Radians * reach, LeastPlayMm) + LeastPlayMm));
            }

            foreach (var play in limits.Plays)
            {
                var at = current.Apply(play.Moved);
                found.Add(Circle(
                    new(at.XMm - play.Fixed.XMm, at.YMm - play.Fixed.YMm), at.XMm - pivot.XMm, at.YMm - pivot.YMm, play.PlayMm));
            }

            return found;
        }

        private LimitedStep.Limit Circle(SectionPoint at, double armX, double armY, double radiusMm) => new(
            Vector<double>.Build.DenseOfArray([at.XMm, at.YMm]),
            Matrix<double>.Build.DenseOfArray(new[,] { { 1, 0, -armY / reach }, { 0, 1, armX / reach } }),
            radiusMm + LeastPlayMm);

        private SimilarityTransform Composed(SimilarityTransform current, Vector<double> step)
        {
            var turn = Math.Clamp(step[2] / reach, -LargestTurnOfStep, LargestTurnOfStep);
            var pivot = current.Apply(centre);
            var (sin, cos) = Math.SinCos(turn);
            var (x, y) = (current.XMm - pivot.XMm, current.YMm - pivot.YMm);
            return current with
            {
                XMm = pivot.XMm + step[0] + (x * cos) - (y * sin),
                YMm = pivot.YMm + step[1] + (x * sin) + (y * cos),
                Turn = current.Turn + Angle.FromRadians(turn),
            };
        }
    }
}
