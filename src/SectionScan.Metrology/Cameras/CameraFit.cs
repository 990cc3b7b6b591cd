using MathNet.Numerics.LinearAlgebra;

namespace SectionScan.Metrology.Cameras;

/// <summary>A camera fitted to the points of a target, with the joint covariance of its lens and pose.</summary>
public sealed class CameraFit
{
    // Below this the fit would trust corners more than any corner finder deserves.
    private const double LeastCornerUncertaintyPx = 0.02;
    private const int PoseParameters = 6;
    private const int Parameters = LensPrior.ParameterCount + PoseParameters;

    private readonly LensPrior prior;
    private readonly double[] fitted;
    private readonly Matrix<double> covariance;

    private CameraFit(LensPrior prior, double[] fitted, Matrix<double> covariance, double rmsPx, double cornerUncertaintyPx)
    {
        this.prior = prior;
        this.fitted = fitted;
        this.covariance = covariance;
        RmsPx = rmsPx;
        CornerUncertaintyPx = cornerUncertaintyPx;
        Camera = CameraAt(fitted);
        HeightStandardUncertaintyMm = StandardUncertaintyOf(camera => camera.HeightMm);
    }

    /// <summary>The most likely camera.</summary>
    public Camera Camera { get; }

    /// <summary>Where the lens came from: "profile" or "self-calibrated".</summary>
    public string Source => prior.Source;

    /// <summary>Root mean square of the reprojection errors, both axes together, px.</summary>
    public double RmsPx { get; }

    /// <summary>The standard uncertainty of one corner along one axis that the fit assumed, px.</summary>
    public double CornerUncertaintyPx { get; }

    /// <summary>u of the camera's height, mm.</summary>
    public double HeightStandardUncertaintyMm { get; }

    /// <summary>Fits lens and pose together: the most likely camera given the points and what was known of the lens before. A
    /// square-on photo cannot tell focal length from height; then the prior decides and the uncertainty says so.</summary>
    /// <param name="points">At least four points of the target, not on one line.</param>
    /// <param name="prior">What is known of the lens.</param>
    /// <param name="start">A rough pose.</param>
    /// <param name="leastCornerUncertaintyPx">The least standard uncertainty of a point along one axis that is believed, px: more for
    /// points picked by hand than for corners found by a machine. The fit itself may tell of a larger one.</param>
    /// <exception cref="ArgumentException">Fewer than four points.</exception>
    public static CameraFit Solve(
        IReadOnlyList<SightedPoint> points, LensPrior prior, Pose start, double leastCornerUncertaintyPx = LeastCornerUncertaintyPx)
    {
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(prior);
        ArgumentNullException.ThrowIfNull(start);
        if (points.Count < 4)
        {
            throw new ArgumentException($"A camera needs at least 4 points, not {points.Count}.", nameof(points));
        }

        var p = new double[Parameters];
        (p[9], p[10], p[11]) = (start.RotationX, start.RotationY, start.RotationZ);
        (p[12], p[13], p[14]) = (start.TranslationXMm, start.TranslationYMm, start.TranslationZMm);
        double[] steps = [.. Enumerable.Repeat(1e-4, LensPrior.ParameterCount), 1e-7, 1e-7, 1e-7, 1e-5, 1e-5, 1e-5];

        // Twice: how well the corners were found is itself learnt from the first fit.
        var sigma = Math.Max(0.1, leastCornerUncertaintyPx);
        LeastSquaresFit fit = null!;
        double rms = 0;
        for (var round = 0; round < 2; round++)
        {
            fit = LeastSquaresFit.Minimise(q => Residuals(q, points, prior, sigma), p, steps);
            p = fit.Parameters;
            double sum = 0;
            for (var i = 0; i < 2 * points.Count; i++)
            {
                sum += fit.Residuals[i] * fit.Residuals[i] * sigma * sigma;
            }

            rms = Math.Sqrt(sum / points.Count);
            var freedom = Math.Max(1, (2 * points.Count) - PoseParameters - 2);
            sigma = Math.Max(leastCornerUncertaintyPx, Math.Sqrt(sum / freedom));
        }

        return new(prior, p, fit.Covariance, rms, sigma);
    }

    /// <summary>The standard uncertainty of any number that follows from the camera, by first-order propagation of the joint
    /// covariance of lens and pose (JCGM 100:2008, 5.2.2).</summary>
    /// <param name="quantity">The number as a smooth function of the camera.</param>
    /// <returns>u in the number's own unit.</returns>
    public double StandardUncertaintyOf(Func<Camera, double> quantity)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        var gradient = Vector<double>.Build.Dense(Parameters);
        var moved = (double[])fitted.Clone();
        for (var j = 0; j < Parameters; j++)
        {
            var step = 0.1 * Math.Sqrt(Math.Max(covariance[j, j], 1e-30));
            moved[j] = fitted[j] + step;
            var above = quantity(CameraAt(moved));
            moved[j] = fitted[j] - step;
            var below = quantity(CameraAt(moved));
            moved[j] = fitted[j];
            gradient[j] = (above - below) / (2 * step);
        }

        return Math.Sqrt(Math.Max(0, gradient * (covariance * gradient)));
    }

    /// <summary>Cameras one standard uncertainty away from the best, as independent causes: what they change adds up in squares.
    /// First what the corners' noise does while the lens is held, then what the lens's uncertainty does with the pose following.</summary>
    public (IReadOnlyList<Camera> TargetFit, IReadOnlyList<Camera> Lens) Deviations()
    {
        // The pose's covariance with the lens held is the Schur complement of the lens's block; the rest of the joint covariance is
        // the lens's own share.
        var lensBlock = covariance.SubMatrix(0, LensPrior.ParameterCount, 0, LensPrior.ParameterCount);
        var cross = covariance.SubMatrix(LensPrior.ParameterCount, PoseParameters, 0, LensPrior.ParameterCount);
        var poseBlock = covariance.SubMatrix(LensPrior.ParameterCount, PoseParameters, LensPrior.ParameterCount, PoseParameters);
        var held = poseBlock - (cross * lensBlock.Inverse() * cross.Transpose());
        var target = Matrix<double>.Build.Dense(Parameters, Parameters);
        target.SetSubMatrix(LensPrior.ParameterCount, LensPrior.ParameterCount, held);
        return (Principal(target), Principal(covariance - target));
    }

    private List<Camera> Principal(Matrix<double> spread)
    {
        // Scaled to unit diagonal first: rotations and focal lengths differ by many powers of ten.
        var scale = spread.Diagonal().PointwiseMaximum(1e-30).PointwiseSqrt();
        var scaled = Matrix<double>.Build.Dense(Parameters, Parameters, (i, j) => spread[i, j] / (scale[i] * scale[j]));
        var evd = scaled.Evd(Symmetricity.Symmetric);
        var cameras = new List<Camera>();
        for (var k = 0; k < Parameters; k++)
        {
            var length = Math.Sqrt(Math.Max(0, evd.EigenValues[k].Real));
            if (length < 1e-7)
            {
                continue;
            }

            var moved = (double[])fitted.Clone();
            for (var i = 0; i < Parameters; i++)
            {
                moved[i] += length * evd.EigenVectors[i, k] * scale[i];
            }

            cameras.Add(CameraAt(moved));
        }

        return cameras;
    }

    private static double[] Residuals(double[] p, IReadOnlyList<SightedPoint> points, LensPrior prior, double sigma)
    {
        var residuals = new double[(2 * points.Count) + LensPrior.ParameterCount];
        var camera = new Camera(prior.At(p), new(p[9], p[10], p[11], p[12], p[13], p[14]));
        for (var i = 0; i < points.Count; i++)
        {
            var seen = camera.Project(points[i].Target, 0);
            residuals[2 * i] = (seen.X - points[i].Pixel.X) / sigma;
            residuals[(2 * i) + 1] = (seen.Y - points[i].Pixel.Y) / sigma;
        }

        for (var i = 0; i < LensPrior.ParameterCount; i++)
        {
            residuals[(2 * points.Count) + i] = p[i];
        }

        return residuals;
    }

    private Camera CameraAt(double[] p) => new(prior.At(p), new(p[9], p[10], p[11], p[12], p[13], p[14]));
}
