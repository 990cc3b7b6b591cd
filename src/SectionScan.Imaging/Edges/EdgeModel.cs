namespace SectionScan.Imaging.Edges;

/// <summary>What a light profile across a face's edge should look like: the face's level, then for the width of the visible wall
/// the wall's, then the ground's with its slope, all blurred alike.</summary>
/// <param name="BlurMm">Standard deviation of the blur, mm.</param>
/// <param name="StripMm">Width of the wall that shows; 0 for none.</param>
/// <param name="WallLevel">The wall's level as far as known, NaN when not.</param>
/// <param name="SlopeStiffness">What a slope of the ground costs: little where a shadow may fall off, much where none can.</param>
/// <param name="WallFirmness">How firmly it is held: noise of a reading over what is known of the wall's level, squared.</param>
internal readonly record struct EdgeModel(double BlurMm, double StripMm, double WallLevel, double WallFirmness, double SlopeStiffness)
{
    private const int MostTerms = 4;

    /// <summary>Fits the levels for an edge at a given place by linear least squares.</summary>
    /// <param name="light">The profile.</param>
    /// <param name="fromMm">Its first place.</param>
    /// <param name="stepMm">Its step.</param>
    /// <param name="edgeMm">The face's edge.</param>
    /// <param name="levels">Gets face, ground, ground slope per mm, and the wall when it shows.</param>
    /// <returns>The sum of squares that is left.</returns>
    public double LeftOver(ReadOnlySpan<float> light, double fromMm, double stepMm, double edgeMm, Span<double> levels)
    {
        var terms = StripMm > 0 ? 4 : 3;
        Span<double> normal = stackalloc double[MostTerms * MostTerms];
        Span<double> right = stackalloc double[MostTerms];
        normal.Clear();
        right.Clear();
        Span<double> basis = stackalloc double[MostTerms];
        double squares = 0;
        for (var k = 0; k < light.Length; k++)
        {
            var s = fromMm + (k * stepMm) - edgeMm;
            var leave = BlurredStep.At(s / BlurMm);
            var arrive = StripMm > 0 ? BlurredStep.At((s - StripMm) / BlurMm) : leave;
            basis[0] = 1 - leave;
            basis[1] = arrive;
            basis[2] = arrive * (s - StripMm);
            basis[3] = leave - arrive;
            var value = light[k];
            squares += value * value;
            for (var i = 0; i < terms; i++)
            {
                right[i] += basis[i] * value;
                for (var j = 0; j <= i; j++)
                {
                    normal[(i * MostTerms) + j] += basis[i] * basis[j];
                }
            }
        }

        normal[(2 * MostTerms) + 2] += SlopeStiffness;
        if (terms == 4 && !double.IsNaN(WallLevel))
        {
            normal[(3 * MostTerms) + 3] += WallFirmness;
            right[3] += WallFirmness * WallLevel;
            squares += WallFirmness * WallLevel * WallLevel;
        }

        SolveSymmetric(normal, right, terms, levels);
        for (var i = 0; i < terms; i++)
        {
            squares -= levels[i] * right[i];
        }

        return Math.Max(0, squares);
    }

    private static void SolveSymmetric(Span<double> matrix, Span<double> right, int n, Span<double> solution)
    {
        // Cholesky; a whisper on the diagonal keeps a missing level (a strip outside the profile) finite.
        Span<double> lower = stackalloc double[MostTerms * MostTerms];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[(i * MostTerms) + j] + (i == j ? 1e-9 : 0);
                for (var k = 0; k < j; k++)
                {
                    sum -= lower[(i * MostTerms) + k] * lower[(j * MostTerms) + k];
                }

                lower[(i * MostTerms) + j] = i == j ? Math.Sqrt(Math.Max(sum, 1e-12)) : sum / lower[(j * MostTerms) + j];
            }
        }

        Span<double> half = stackalloc double[MostTerms];
        for (var i = 0; i < n; i++)
        {
            var sum = right[i];
            for (var k = 0; k < i; k++)
            {
                sum -= lower[(i * MostTerms) + k] * half[k];
            }

            half[i] = sum / lower[(i * MostTerms) + i];
        }

        for (var i = n - 1; i >= 0; i--)
        {
            var sum = half[i];
            for (var k = i + 1; k < n; k++)
            {
                sum -= lower[(k * MostTerms) + i] * solution[k];
            }

            solution[i] = sum / lower[(i * MostTerms) + i];
        }
    }
}
