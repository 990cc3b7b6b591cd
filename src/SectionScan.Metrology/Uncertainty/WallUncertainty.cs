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
            var (before, after) = (outline[i - 1], outline[i + 1]);
            var chord = before.DistanceTo(after);
            if (chord > 0)
            {
                var (normalX, normalY) = ((after.YMm - before.YMm) / chord, (before.XMm - after.XMm) / chord);
                along[i] = ((moved[i].XMm - outline[i].XMm) * normalX) + ((moved[i].YMm - outline[i].YMm) * normalY);
            }
        }

        return along;
    }
}
