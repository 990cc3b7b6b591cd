using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>How far each cause of error moves an outline's wall along its outward normal, corner by corner: from it the uncertainty of any
/// place, and of the distance between two walls that face each other.</summary>
public sealed class WallMoves
{
    private readonly List<double[]> moves = [];
    private readonly double randomMm2;

    /// <summary>Takes the moves.</summary>
    /// <param name="outline">The outline, mm.</param>
    /// <param name="sources">Independent causes of error at one standard uncertainty; none gives zero everywhere.</param>
    public WallMoves(Outline outline, IReadOnlyList<OutlineErrorSource> sources)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(sources);
        var displacement = new OutlineDisplacement(outline);
        foreach (var effect in sources.SelectMany(source => source.Effects))
        {
            if (effect is RandomEdgeEffect random)
            {
                randomMm2 += random.StandardDeviationMm * random.StandardDeviationMm;
            }
            else
            {
                moves.Add(WallUncertainty.Along(outline, displacement, effect));
            }
        }
    }

    /// <summary>u of the wall's place at a corner, mm: all effects added in squares (JCGM 100:2008, 5.1.2).</summary>
    public double At(int corner) => Math.Sqrt(moves.Sum(move => move[corner] * move[corner]) + randomMm2);

    /// <summary>u of the distance between two walls that face each other at two corners, mm. One effect moves both, so that its moves add
    /// before they are squared; random moves do not.</summary>
    public double Across(int corner, int opposite) =>
        Math.Sqrt(moves.Sum(move => (move[corner] + move[opposite]) * (move[corner] + move[opposite])) + (2 * randomMm2));
}
