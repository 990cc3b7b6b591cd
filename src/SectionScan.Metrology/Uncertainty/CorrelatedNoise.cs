using MathNet.Numerics.Distributions;
using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>Normal moves with the autocorrelation exp(−πs²/L²): white noise smoothed by exp(−2πs²/L²).</summary>
internal sealed class CorrelatedNoise
{
    private readonly OutlineDisplacement outline;
    private readonly (int Index, double Weight)[][] kernels;

    public CorrelatedNoise(OutlineDisplacement outline, RandomEdgeEffect effect)
    {
        this.outline = outline;
        var correlation = outline.CorrelationLengthMm(effect);
        kernels = new (int, double)[outline.Corners.Length][];
        for (var i = 0; i < kernels.Length; i++)
        {
            kernels[i] = Kernel(i, correlation, effect.StandardDeviationMm);
        }
    }

    public void Add(Random random, SectionPoint[] moved)
    {
        var white = new double[moved.Length];
        Normal.Samples(random, white, 0, 1);
        for (var i = 0; i < moved.Length; i++)
        {
            var move = 0.0;
            foreach (var (index, weight) in kernels[i])
            {
                move += weight * white[index];
            }

            outline.MoveAlongNormal(i, move, moved);
        }
    }

    private (int, double)[] Kernel(int centre, double correlationMm, double standardDeviationMm)
    {
        var count = outline.Corners.Length;
        var kernel = new List<(int Index, double Weight)> { (centre, Math.Sqrt(outline.LengthsMm[centre])) };
        foreach (var direction in new[] { 1, -1 })
        {
            var apart = 0.0;
            for (var step = 1; step <= (count - 1) / 2; step++)
            {
                var (from, to) = (Round(centre + (direction * (step - 1))), Round(centre + (direction * step)));
                apart += outline.Corners[from].DistanceTo(outline.Corners[to]);
                if (apart > 2 * correlationMm)
                {
                    break;
                }

                var smoothing = Math.Exp(-2 * Math.PI * apart * apart / (correlationMm * correlationMm));
                kernel.Add((to, smoothing * Math.Sqrt(outline.LengthsMm[to])));
            }
        }

        var size = Math.Sqrt(kernel.Sum(part => part.Weight * part.Weight));
        return [.. kernel.Select(part => (part.Index, part.Weight * standardDeviationMm / size))];

        int Round(int i) => ((i % count) + count) % count;
    }
}
