using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>Carries the errors of an outline into its measures: the outline is moved as each cause would move it, and measured again
/// (JCGM 100:2008, 5.1.3, note 2: sensitivity by calculation).</summary>
public static class OutlineUncertainty
{
    /// <summary>The uncertainty budget of one measure: one row a source, its effects added in squares.</summary>
    public static UncertaintyBudget Of(Outline outline, IReadOnlyList<OutlineErrorSource> sources, Measure measure) =>
        Of(outline, sources, [measure])[0];

    /// <summary>The uncertainty budgets of several measures, in the measures' order. The rows keep the sources' order.</summary>
    /// <param name="outline">The outline, mm.</param>
    /// <param name="sources">Independent causes of error at one standard uncertainty; none gives budgets without rows.</param>
    /// <param name="measures">The measures.</param>
    public static IReadOnlyList<UncertaintyBudget> Of(
        Outline outline, IReadOnlyList<OutlineErrorSource> sources, IReadOnlyList<Measure> measures)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(sources);
        ArgumentNullException.ThrowIfNull(measures);
        var displacement = new OutlineDisplacement(outline);
        var rows = measures.Select(_ => new List<BudgetRow>(sources.Count)).ToArray();
        foreach (var source in sources)
        {
            var squares = new double[measures.Count];
            foreach (var effect in source.Effects)
            {
                var parts = effect is RandomEdgeEffect noise
                    ? RandomEdge.Of(displacement, noise, measures)
                    : OfWholeMove(displacement, effect, measures);
                for (var k = 0; k < squares.Length; k++)
                {
                    squares[k] += parts[k] * parts[k];
                }
            }

            for (var k = 0; k < squares.Length; k++)
            {
                rows[k].Add(new(source.Name, Math.Sqrt(squares[k])));
            }
        }

        return Array.ConvertAll(rows, r => new UncertaintyBudget(r));
    }

    private static double[] OfWholeMove(OutlineDisplacement displacement, OutlineEffect effect, IReadOnlyList<Measure> measures)
    {
        var (higher, lower) = (Moved(1), Moved(-1));
        return [.. measures.Select(measure => Math.Abs(measure.Definition(higher) - measure.Definition(lower)) / 2)];

        PolygonFacts Moved(double factor)
        {
            SectionPoint[] moved = displacement.Corners.ToArray();
            displacement.Add(effect, factor, moved);
            return new(moved);
        }
    }
}
