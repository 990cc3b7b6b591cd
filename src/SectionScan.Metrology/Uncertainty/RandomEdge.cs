using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>The uncertainty that a random edge gives to measures.</summary>
/// <remarks>
/// A measure that depends smoothly on the outline: the outline is cut into blocks one correlation length L long, which move
/// independently; with G the measure's response to one block, u² = σ²·ΣG². For the area, G = L and u = σ·√(P·L). To this comes what
/// roughness does at second order, foremost to the perimeter: neighbouring corners differ by σ·√(2(1 − ρ)) with ρ = exp(−πs²/L²) at
/// their spacing s, which a zigzag of the same size shows.
/// A measure of few points takes the outermost of many random moves. At a sharp point that is one move, u = σ an end; along a flat
/// stretch n correlation lengths long it is the largest of n: shifted out by E(max) with a smaller spread; on a round wall the
/// stretch within about σ of the end counts, and a round section's largest Feret diameter has many ends to choose from. No formula
/// holds for all of these, so these measures are drawn, with a fixed seed, after JCGM 101:2008.
/// Both kinds count the mean shift in full (JCGM 100:2008, F.2.4.5): it has a known sign, but its size is known no better than the
/// noise, so that it is not corrected.
/// </remarks>
internal static class RandomEdge
{
    /// <summary>More blocks than this cost time and change nothing.</summary>
    private const int MostBlocks = 120;

    /// <summary>u from this many draws is itself known to 7 %, better than any σ that goes into it.</summary>
    private const int Draws = 100;

    private const int Seed = 101;

    /// <summary>The standard uncertainties of measures, in the measures' order and units.</summary>
    public static double[] Of(OutlineDisplacement outline, RandomEdgeEffect noise, IReadOnlyList<Measure> measures)
    {
        var facts = new PolygonFacts(outline.Corners.ToArray());
        var variances = new double[measures.Count];
        var smooth = Enumerable.Range(0, measures.Count).Where(k => !measures[k].HangsOnFewPoints).ToArray();
        AddBlocks(outline, noise, measures, smooth, variances);
        AddRoughness(outline, noise, facts, measures, smooth, variances);
        AddDraws(outline, noise, facts, measures, variances);
        return Array.ConvertAll(variances, Math.Sqrt);
    }

    private static void AddBlocks(
        OutlineDisplacement outline, RandomEdgeEffect noise, IReadOnlyList<Measure> measures, int[] smooth, double[] variances)
    {
        if (smooth.Length == 0)
        {
            return;
        }

        var count = outline.Corners.Length;
        var correlation = outline.CorrelationLengthMm(noise);
        var blocks = Math.Clamp((int)Math.Round(outline.PerimeterMm / correlation), 1, Math.Min(count, MostBlocks));

        // Longer blocks than L stand for several that average out; one block for all is an outline that moves as one.
        var independence = blocks == 1 ? 1 : correlation * blocks / outline.PerimeterMm;
        var moved = new SectionPoint[count];
        var at = 0.0;
        for (var from = 0; from < count;)
        {
            var block = BlockAt(at);
            var to = from;
            while (to < count && BlockAt(at) == block)
            {
                at += outline.LengthsMm[to++];
            }

            var higher = Moved(from, to, 1);
            var responses = Array.ConvertAll(smooth, k => measures[k].Definition(higher));
            var lower = Moved(from, to, -1);
            for (var s = 0; s < smooth.Length; s++)
            {
                var response = (responses[s] - measures[smooth[s]].Definition(lower)) / 2;
                variances[smooth[s]] += independence * response * response;
            }

            from = to;
        }

        int BlockAt(double lengthMm) => Math.Min(blocks - 1, (int)((lengthMm / outline.PerimeterMm * blocks) + 1e-9));

        PolygonFacts Moved(int from, int to, double factor)
        {
            // One array for all blocks: the block before is put back, and a block's facts are used up before the next.
            outline.Corners.CopyTo(moved);
            for (var i = from; i < to; i++)
            {
                outline.MoveAlongNormal(i, factor * noise.StandardDeviationMm, moved);
            }

            return new(moved);
        }
    }

    private static void AddDraws(
        OutlineDisplacement outline, RandomEdgeEffect noise, PolygonFacts facts, IReadOnlyList<Measure> measures, double[] variances)
    {
        var few = Enumerable.Range(0, measures.Count).Where(k => measures[k].HangsOnFewPoints).ToArray();
        if (few.Length == 0)
        {
            return;
        }

        var truth = Array.ConvertAll(few, k => measures[k].Definition(facts));
        var edge = new CorrelatedNoise(outline, noise);
        var random = new Random(Seed);
        for (var draw = 0; draw < Draws; draw++)
        {
            var moved = outline.Corners.ToArray();
            edge.Add(random, moved);
            var movedFacts = new PolygonFacts(moved);
            for (var e = 0; e < few.Length; e++)
            {
                var error = measures[few[e]].Definition(movedFacts) - truth[e];
                variances[few[e]] += error * error / Draws;
            }
        }
    }

    private static void AddRoughness(
        OutlineDisplacement outline,
        RandomEdgeEffect noise,
        PolygonFacts facts,
        IReadOnlyList<Measure> measures,
        int[] smooth,
        double[] variances)
    {
        // Without the part that moves the outline as a whole, which an odd number of corners would leave over.
        var even = outline.Corners.Length - (outline.Corners.Length % 2);
        var correlation = outline.CorrelationLengthMm(noise);
        var rough = outline.Corners.ToArray();
        for (var i = 0; i < even; i++)
        {
            var apart = outline.LengthsMm[i] / correlation;
            var move = noise.StandardDeviationMm * Math.Sqrt((1 - Math.Exp(-Math.PI * apart * apart)) / 2);
            outline.MoveAlongNormal(i, i % 2 == 0 ? move : -move, rough);
        }

        var roughFacts = new PolygonFacts(rough);
        foreach (var k in smooth)
        {
            var bias = measures[k].Definition(roughFacts) - measures[k].Definition(facts);
            variances[k] += bias * bias;
        }
    }
}
