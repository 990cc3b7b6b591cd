using MathNet.Numerics.Distributions;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>Carries the errors of an outline into its measures by seeded draws of all effects at once: slower than
/// <see cref="OutlineUncertainty"/> and free of its approximations, hence the check on it.</summary>
public static class OutlineMonteCarlo
{
    /// <summary>Moves the outline by normal draws of every effect and measures it, again and again.</summary>
    /// <returns>One summary a measure, in the measures' order.</returns>
    public static IReadOnlyList<MonteCarloSummary> Run(
        Outline outline, IReadOnlyList<OutlineErrorSource> sources, IReadOnlyList<Measure> measures, int draws, int seed)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(sources);
        ArgumentNullException.ThrowIfNull(measures);
        var displacement = new OutlineDisplacement(outline);
        var effects = sources.SelectMany(source => source.Effects).ToArray();
        var noises = effects.OfType<RandomEdgeEffect>().Distinct().ToDictionary(
            OutlineEffect (effect) => effect, effect => new CorrelatedNoise(displacement, effect));
        return MonteCarlo.Propagate(Measured, measures.Count, draws, seed);

        double[] Measured(Random random)
        {
            var moved = displacement.Corners.ToArray();
            foreach (var effect in effects)
            {
                if (noises.TryGetValue(effect, out var noise))
                {
                    noise.Add(random, moved);
                }
                else
                {
                    displacement.Add(effect, Normal.Sample(random, 0, 1), moved);
                }
            }

            var facts = new PolygonFacts(moved);
            return [.. measures.Select(measure => measure.Definition(facts))];
        }
    }
}
