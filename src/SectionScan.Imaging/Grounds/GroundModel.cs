using MathNet.Numerics.LinearAlgebra;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Grounds;

/// <summary>How bright and of what tint the bare, lit ground (paper) would be at each place: a smooth surface in the logarithm of
/// linear light, one per colour. Light falls off smoothly; a cubic in x and y follows it.</summary>
internal sealed class GroundModel
{
    private const int Terms = 10;

    private readonly double[][] coefficients;
    private readonly double centreX;
    private readonly double centreY;
    private readonly double scale;

    private GroundModel(double[][] coefficients, double centreX, double centreY, double scale) =>
        (this.coefficients, this.centreX, this.centreY, this.scale) = (coefficients, centreX, centreY, scale);

    /// <summary>The logarithm of the ground's linear light at a place, for colour 0 red, 1 green, 2 blue.</summary>
    public double LogLight(TargetPoint place, int colour)
    {
        Span<double> basis = stackalloc double[Terms];
        Basis(place, basis);
        double sum = 0;
        for (var k = 0; k < Terms; k++)
        {
            sum += coefficients[colour][k] * basis[k];
        }

        return sum;
    }

    /// <summary>The surface along a row of a view: a cubic in the column.</summary>
    public RowCubic AlongRow(PlaneView view, int row, int colour)
    {
        // Four places fix a cubic: read it off them by Newton's divided differences.
        var step = (view.Columns - 1) / 3.0;
        Span<double> d = stackalloc double[4];
        for (var k = 0; k < 4; k++)
        {
            d[k] = LogLight(view.PlaceOf(k * step, row), colour);
        }

        var (first, second, third) = ((d[1] - d[0]) / step, (d[2] - (2 * d[1]) + d[0]) / (2 * step * step), (d[3] - (3 * d[2]) + (3 * d[1]) - d[0]) / (6 * step * step * step));
        return new((float)d[0], (float)first, (float)second, (float)third, (float)step);
    }

    /// <summary>Fits the surface to samples that are mostly ground: those that the fit so far finds too dark or too bright are
    /// left out, darker ones sooner, since shadows are darker.</summary>
    /// <param name="samples">Place and natural logarithm of linear red, green, blue.</param>
    /// <param name="trusted">How many of the first samples are known to be ground (the target's own white squares); the first
    /// round looks at these alone.</param>
    /// <param name="widthMm">Width of the region, for scaling.</param>
    public static GroundModel Fit(IReadOnlyList<(TargetPoint Place, double Red, double Green, double Blue)> samples, int trusted, double widthMm)
    {
        var (centreX, centreY) = (samples.Average(s => s.Place.XMm), samples.Average(s => s.Place.YMm));
        var model = new GroundModel([new double[Terms], new double[Terms], new double[Terms]], centreX, centreY, widthMm / 2);
        var use = new bool[samples.Count];
        Array.Fill(use, true, 0, trusted);
        for (var round = 0; round < 7; round++)
        {
            // First the trusted alone and stiff, then everything that agrees, ever more strictly.
            var terms = round < 3 ? 6 : Terms;
            model.Solve(samples, use, terms);
            var tolerance = Math.Max(0.035, 0.12 / (1 + round));
            for (var i = 0; i < samples.Count; i++)
            {
                var s = samples[i];
                var (r, g, b) = (s.Red - model.LogLight(s.Place, 0), s.Green - model.LogLight(s.Place, 1), s.Blue - model.LogLight(s.Place, 2));
                var agrees = Math.Min(r, Math.Min(g, b)) > -tolerance && Math.Max(r, Math.Max(g, b)) < 1.5 * tolerance;
                use[i] = agrees && (round >= 1 || i < trusted);
            }

            if (use.Count(u => u) < 4 * Terms)
            {
                Array.Fill(use, true, 0, trusted);
            }
        }

        return model;
    }

    private void Solve(IReadOnlyList<(TargetPoint Place, double Red, double Green, double Blue)> samples, bool[] use, int terms)
    {
        var normal = Matrix<double>.Build.Dense(terms, terms);
        var right = Matrix<double>.Build.Dense(terms, 3);
        Span<double> basis = stackalloc double[Terms];
        for (var i = 0; i < samples.Count; i++)
        {
            if (!use[i])
            {
                continue;
            }

            var s = samples[i];
            Basis(s.Place, basis);
            for (var j = 0; j < terms; j++)
            {
                for (var k = 0; k < terms; k++)
                {
                    normal[j, k] += basis[j] * basis[k];
                }

                right[j, 0] += basis[j] * s.Red;
                right[j, 1] += basis[j] * s.Green;
                right[j, 2] += basis[j] * s.Blue;
            }
        }

        for (var j = 0; j < terms; j++)
        {
            // A whisper of stiffness keeps the corners sane when they hold no sample.
            normal[j, j] += j == 0 ? 1e-9 : 1e-4 * normal[0, 0];
        }

        var solution = normal.Cholesky().Solve(right);
        for (var colour = 0; colour < 3; colour++)
        {
            for (var j = 0; j < Terms; j++)
            {
                coefficients[colour][j] = j < terms ? solution[j, colour] : 0;
            }
        }
    }

    private void Basis(TargetPoint place, Span<double> basis)
    {
        var (x, y) = ((place.XMm - centreX) / scale, (place.YMm - centreY) / scale);
        basis[0] = 1;
        basis[1] = x;
        basis[2] = y;
        basis[3] = x * x;
        basis[4] = x * y;
        basis[5] = y * y;
        basis[6] = x * x * x;
        basis[7] = x * x * y;
        basis[8] = x * y * y;
        basis[9] = y * y * y;
    }
}
