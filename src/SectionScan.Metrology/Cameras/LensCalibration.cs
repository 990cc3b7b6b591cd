using MathNet.Numerics.LinearAlgebra;

namespace SectionScan.Metrology.Cameras;

/// <summary>A lens learnt from several photos of a flat target, with the joint covariance of its nine numbers.</summary>
/// <param name="Lens">The most likely lens.</param>
/// <param name="Covariance">Nine rows of nine in the order fx, fy, cx, cy, k1, k2, p1, p2, k3; the poses' share counted in.</param>
/// <param name="RmsPx">Root mean square of all reprojection errors, both axes together, px.</param>
/// <param name="ViewRmsPx">The same for each photo.</param>
/// <param name="Poses">The pose of each photo.</param>
public sealed record LensCalibration(
    Lens Lens, double[][] Covariance, double RmsPx, IReadOnlyList<double> ViewRmsPx, IReadOnlyList<Pose> Poses)
{
    private const int PoseParameters = 6;

    /// <summary>Bundle adjustment: lens and all poses together, from a weak prior of the lens.</summary>
    /// <param name="views">Two or more photos.</param>
    /// <param name="prior">What is known of the lens; weak, see <see cref="LensPrior.Unknown"/>.</param>
    /// <remarks>Z. Zhang, "A flexible new technique for camera calibration", PAMI 22 (2000) 1330, section 3.2–3.3: maximum
    /// likelihood over all views with radial distortion (cited from memory).</remarks>
    /// <exception cref="ArgumentException">Fewer than two photos.</exception>
    public static LensCalibration Solve(IReadOnlyList<LensView> views, LensPrior prior)
    {
        ArgumentNullException.ThrowIfNull(views);
        ArgumentNullException.ThrowIfNull(prior);
        if (views.Count < 2)
        {
            throw new ArgumentException($"A lens needs at least 2 photos, not {views.Count}.", nameof(views));
        }

        var p = new double[LensPrior.ParameterCount + (PoseParameters * views.Count)];
        var steps = new double[p.Length];
        Array.Fill(steps, 1e-4, 0, LensPrior.ParameterCount);
        for (var v = 0; v < views.Count; v++)
        {
            var pose = views[v].Start;
            double[] numbers = [pose.RotationX, pose.RotationY, pose.RotationZ, pose.TranslationXMm, pose.TranslationYMm, pose.TranslationZMm];
            numbers.CopyTo(p, Offset(v));
            double[] poseSteps = [1e-7, 1e-7, 1e-7, 1e-5, 1e-5, 1e-5];
            poseSteps.CopyTo(steps, Offset(v));
        }

        var sigma = 0.2;
        LeastSquaresFit fit = null!;
        var corners = views.Sum(v => v.Points.Count);
        for (var round = 0; round < 2; round++)
        {
            fit = LeastSquaresFit.Minimise(q => Residuals(q, views, prior, sigma), p, steps);
            p = fit.Parameters;
            var sum = SumOfSquares(fit.Residuals, 0, 2 * corners) * sigma * sigma;
            sigma = Math.Sqrt(sum / Math.Max(1, (2 * corners) - p.Length));
        }

        return Summarise(fit, views, prior, sigma, corners);
    }

    private static LensCalibration Summarise(LeastSquaresFit fit, IReadOnlyList<LensView> views, LensPrior prior, double sigma, int corners)
    {
        var root = Matrix<double>.Build.DenseOfRowArrays(prior.Root);
        var own = fit.Covariance.SubMatrix(0, LensPrior.ParameterCount, 0, LensPrior.ParameterCount);
        var covariance = root * own * root.Transpose();
        var perView = new List<double>();
        var at = 0;
        foreach (var view in views)
        {
            perView.Add(sigma * Math.Sqrt(SumOfSquares(fit.Residuals, at, 2 * view.Points.Count) / view.Points.Count));
            at += 2 * view.Points.Count;
        }

        var poses = Enumerable.Range(0, views.Count).Select(v => PoseAt(fit.Parameters, v)).ToArray();
        var rms = sigma * Math.Sqrt(SumOfSquares(fit.Residuals, 0, 2 * corners) / corners);
        return new(prior.At(fit.Parameters), covariance.ToRowArrays(), rms, perView, poses);
    }

    private static double[] Residuals(double[] p, IReadOnlyList<LensView> views, LensPrior prior, double sigma)
    {
        var residuals = new double[(2 * views.Sum(v => v.Points.Count)) + LensPrior.ParameterCount];
        var lens = prior.At(p);
        var at = 0;
        for (var v = 0; v < views.Count; v++)
        {
            var camera = new Camera(lens, PoseAt(p, v));
            foreach (var point in views[v].Points)
            {
                var seen = camera.Project(point.Target, 0);
                residuals[at++] = (seen.X - point.Pixel.X) / sigma;
                residuals[at++] = (seen.Y - point.Pixel.Y) / sigma;
            }
        }

        for (var i = 0; i < LensPrior.ParameterCount; i++)
        {
            residuals[at++] = p[i];
        }

        return residuals;
    }

    private static double SumOfSquares(double[] values, int from, int count) => values.Skip(from).Take(count).Sum(v => v * v);

    private static int Offset(int view) => LensPrior.ParameterCount + (PoseParameters * view);

    private static Pose PoseAt(double[] p, int view)
    {
        var o = Offset(view);
        return new(p[o], p[o + 1], p[o + 2], p[o + 3], p[o + 4], p[o + 5]);
    }
}
