using MathNet.Numerics.LinearAlgebra;

namespace SectionScan.Metrology.Comparison;

/// <summary>The least of a quadratic ½pᵀHp − gᵀp within circles: each limit says that a vector a + B·p is no longer than its reach.</summary>
/// <remarks>Interior point with a logarithmic barrier and Newton steps: S. Boyd, L. Vandenberghe, "Convex Optimization", 2004,
/// 11.3 (cited from memory). Problem and limits are convex, so there is one answer.</remarks>
internal static class LimitedStep
{
    private const double FirstBarrier = 1;
    private const double LastBarrier = 1e-13;
    private const double BarrierFactor = 0.2;
    private const int MostNewtonSteps = 30;

    /// <summary>A limit: |a + B·p| ≤ reach.</summary>
    /// <param name="Start">a, within the reach.</param>
    /// <param name="Change">B, one row for each coordinate of a.</param>
    /// <param name="Reach">The longest, positive.</param>
    public sealed record Limit(Vector<double> Start, Matrix<double> Change, double Reach);

    /// <summary>Solves from p = 0, which lies within all limits.</summary>
    public static Vector<double> Least(Matrix<double> h, Vector<double> g, IReadOnlyList<Limit> limits)
    {
        if (limits.Count == 0)
        {
            return h.Solve(g);
        }

        var p = Vector<double>.Build.Dense(g.Count);
        for (var barrier = FirstBarrier; barrier >= LastBarrier; barrier *= BarrierFactor)
        {
            for (var turn = 0; turn < MostNewtonSteps; turn++)
            {
                var (gradient, curvature) = Derivatives(h, g, limits, barrier, p);
                var step = curvature.Solve(-gradient);
                var decrease = -gradient.DotProduct(step);
                if (!(decrease > 1e-18))
                {
                    break;
                }

                var value = Value(h, g, limits, barrier, p);
                var share = 1.0;
                while (share > 1e-12 && !(Value(h, g, limits, barrier, p + (share * step)) <= value - (0.1 * share * decrease)))
                {
                    share /= 2;
                }

                if (share <= 1e-12)
                {
                    break;
                }

                p += share * step;
            }
        }

        return p;
    }

    private static double Value(Matrix<double> h, Vector<double> g, IReadOnlyList<Limit> limits, double barrier, Vector<double> p)
    {
        var value = (0.5 * p.DotProduct(h * p)) - g.DotProduct(p);
        foreach (var limit in limits)
        {
            var v = (limit.Start + (limit.Change * p)) / limit.Reach;
            var slack = 1 - v.DotProduct(v);
            value = slack > 0 ? value - (barrier * Math.Log(slack)) : double.PositiveInfinity;
        }

        return value;
    }

    private static (Vector<double> Gradient, Matrix<double> Curvature) Derivatives(
        Matrix<double> h, Vector<double> g, IReadOnlyList<Limit> limits, double barrier, Vector<double> p)
    {
        var (gradient, curvature) = ((h * p) - g, h.Clone());
        foreach (var limit in limits)
        {
            var change = limit.Change / limit.Reach;
            var v = (limit.Start + (limit.Change * p)) / limit.Reach;
            var slack = 1 - v.DotProduct(v);
            var pull = 2 * (change.Transpose() * v);
            gradient += barrier / slack * pull;
            curvature += (2 * barrier / slack * (change.Transpose() * change)) + (barrier / (slack * slack) * pull.OuterProduct(pull));
        }

        return (gradient, curvature);
    }
}
