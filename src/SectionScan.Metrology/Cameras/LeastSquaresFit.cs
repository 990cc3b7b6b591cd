using MathNet.Numerics.LinearAlgebra;

namespace SectionScan.Metrology.Cameras;

/// <summary>The outcome of a nonlinear least-squares fit.</summary>
/// <param name="Parameters">The parameters at the least sum of squares.</param>
/// <param name="Covariance">(JᵀJ)⁻¹ there: the covariance of the parameters when every residual was scaled to unit variance.</param>
/// <param name="Residuals">The residuals there.</param>
internal sealed record LeastSquaresFit(double[] Parameters, Matrix<double> Covariance, double[] Residuals)
{
    private const int MostSteps = 60;

    /// <summary>Minimises Σ r_i(p)² by the Levenberg–Marquardt method with a forward-difference Jacobian.</summary>
    /// <param name="residuals">r(p), residuals scaled to unit variance; the same length each time, at least as long as p.</param>
    /// <param name="start">Where to start.</param>
    /// <param name="steps">The step of each parameter for the differences: about 1e-6 of its typical size.</param>
    /// <remarks>K. Madsen, H. B. Nielsen, O. Tingleff, "Methods for non-linear least squares problems", 2004, section 3.2 (cited
    /// from memory): damping µ times the diagonal of JᵀJ, a tenth of it after a good step, ten times after a bad one.</remarks>
    public static LeastSquaresFit Minimise(Func<double[], double[]> residuals, double[] start, double[] steps)
    {
        var p = (double[])start.Clone();
        var r = residuals(p);
        var cost = SumOfSquares(r);
        var damping = 1e-3;
        var jacobian = Jacobian(residuals, p, r, steps);
        for (var step = 0; step < MostSteps; step++)
        {
            var normal = jacobian.TransposeThisAndMultiply(jacobian);
            var gradient = jacobian.TransposeThisAndMultiply(Vector<double>.Build.Dense(r));
            var damped = normal.Clone();
            for (var i = 0; i < p.Length; i++)
            {
                damped[i, i] += damping * Math.Max(normal[i, i], 1e-12);
            }

            var change = damped.Cholesky().Solve(gradient);
            var next = new double[p.Length];
            for (var i = 0; i < p.Length; i++)
            {
                next[i] = p[i] - change[i];
            }

            var nextResiduals = residuals(next);
            var nextCost = SumOfSquares(nextResiduals);
            if (nextCost <= cost)
            {
                var gained = cost - nextCost;
                (p, r, cost) = (next, nextResiduals, nextCost);
                damping = Math.Max(damping / 10, 1e-12);
                jacobian = Jacobian(residuals, p, r, steps);
                if (gained <= 1e-12 * (cost + 1e-12))
                {
                    break;
                }
            }
            else
            {
                damping *= 10;
                if (damping > 1e9)
                {
                    break;
                }
            }
        }

        return new(p, jacobian.TransposeThisAndMultiply(jacobian).Inverse(), r);
    }

    private static double SumOfSquares(double[] r)
    {
        double sum = 0;
        foreach (var value in r)
        {
            sum += value * value;
        }

        return double.IsFinite(sum) ? sum : double.MaxValue;
    }

    private static Matrix<double> Jacobian(Func<double[], double[]> residuals, double[] p, double[] r, double[] steps)
    {
        var jacobian = Matrix<double>.Build.Dense(r.Length, p.Length);
        var moved = (double[])p.Clone();
        for (var j = 0; j < p.Length; j++)
        {
            moved[j] = p[j] + steps[j];
            var there = residuals(moved);
            moved[j] = p[j];
            for (var i = 0; i < r.Length; i++)
            {
                jacobian[i, j] = (there[i] - r[i]) / steps[j];
            }
        }

        return jacobian;
    }
}
