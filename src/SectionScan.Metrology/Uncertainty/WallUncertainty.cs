using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>How well the place of a wall is known.</summary>
public static class WallUncertainty
{
    /// <summary>The standard uncertainty of a wall's place along its normal, taken as one number for the whole outline.</summary>
    /// <param name="outline">The outline, mm.</param>
    /// <param name="sources">Independent causes of error at one standard uncertainty; none gives zero.</param>
    /// <returns>u in mm: for each effect the root mean square over the outline's length of the move along the outward normal, all
    /// effects added in squares (JCGM 100:2008, 5.1.2). Moves along the wall do not count, for they change no shape.</returns>
    public static double Of(Outline outline, IReadOnlyList<OutlineErrorSource> sources)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(sources);
        var displacement = new OutlineDisplacement(outline);
        return Math.Sqrt(sources.SelectMany(source => source.Effects).Sum(effect => MeanSquareMm2(outline, displacement, effect)));
    }

    /// <summary>The standard uncertainty of a wall's place along its normal at one place, cause by cause.</summary>
    /// <param name="outline">The outline, mm.</param>
    /// <param name="sources">Independent causes of error at one standard uncertainty.</param>
    /// <param name="place">The place; the outline's nearest corner counts.</param>
    /// <returns>A row for each cause with its u in mm: the move along the outward normal there, the effects of one cause added in squares.</returns>
    public static IReadOnlyList<BudgetRow> At(Outline outline, IReadOnlyList<OutlineErrorSource> sources, SectionPoint place)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(sources);
        var displacement = new OutlineDisplacement(outline);
        var corner = Enumerable.Range(0, outline.Count).MinBy(i => outline[i].DistanceTo(place));
        return [.. sources.Select(source => new BudgetRow(source.Name, Math.Sqrt(source.Effects.Sum(Square))))];

        double Square(OutlineEffect effect)
        {
            if (effect is RandomEdgeEffect random)
            {
                return random.StandardDeviationMm * random.StandardDeviationMm;
            }

            SectionPoint[] moved = displacement.Corners.ToArray();
            displacement.Add(effect, 1, moved);
            var along = MoveAlongNormal(outline, corner, moved[corner]);
            return along * along;
        }
    }

    private static double MeanSquareMm2(Outline outline, OutlineDisplacement displacement, OutlineEffect effect)
    {
        if (effect is RandomEdgeEffect random)
        {
            return random.StandardDeviationMm * random.StandardDeviationMm;
        }

        var along = Along(outline, displacement, effect);
        return along.Select((move, i) => move * move * displacement.LengthsMm[i]).Sum() / displacement.PerimeterMm;
    }

    /// <summary>How far an effect that moves the outline as a whole moves each corner along its outward normal, mm.</summary>
    internal static double[] Along(Outline outline, OutlineDisplacement displacement, OutlineEffect effect)
    {
        SectionPoint[] moved = displacement.Corners.ToArray();
        displacement.Add(effect, 1, moved);
        var along = new double[moved.Length];
        for (var i = 0; i < moved.Length; i++)
        {
            along[i] = MoveAlongNormal(outline, i, moved[i]);
        }

        return along;
    }

    private static double MoveAlongNormal(Outline outline, int corner, SectionPoint moved)
    {
        var (before, after) = (outline[corner - 1], outline[corner + 1]);
        var chord = before.DistanceTo(after);
        return chord == 0 ? 0
            : (((moved.XMm - outline[corner].XMm) * (after.YMm - before.YMm)) + ((moved.YMm - outline[corner].YMm) * (before.XMm - after.XMm))) / chord;
    }
}
