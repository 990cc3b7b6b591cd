using MathNet.Numerics;
using SectionScan.Metrology.Frames;

namespace SectionScan.Porting.Lengthwise;

/// <summary>Carries a wall on to the line of a cut end.</summary>
internal static class CarriedWall
{
    private const double StepMm = 0.2;
    private const double FarthestMm = 15;

    /// <summary>The places beyond the wall's last point, the last of them on the end's line.</summary>
    /// <param name="end">The end's line.</param>
    /// <param name="wall">The wall's last stretch, toward the end.</param>
    /// <returns>One place or more; none when the wall does not reach the line.</returns>
    public static IReadOnlyList<SectionPoint> To(FittedLine end, IReadOnlyList<SectionPoint> wall)
    {
        // A parabola in the frame of the stretch: u along its chord, v square to it.
        var (first, last) = (wall[0], wall[^1]);
        var chord = first.DistanceTo(last);
        var (x, y) = ((last.XMm - first.XMm) / chord, (last.YMm - first.YMm) / chord);
        double[] u = [.. wall.Select(p => ((p.XMm - last.XMm) * x) + ((p.YMm - last.YMm) * y))];
        double[] v = [.. wall.Select(p => ((p.YMm - last.YMm) * x) - ((p.XMm - last.XMm) * y))];
        var fit = Fit.Polynomial(u, v, 2);
        SectionPoint At(double along)
        {
            // The fit's small miss at the last point is shared out so that the line stays whole.
            var across = fit[0] + (fit[1] * along) + (fit[2] * along * along) - fit[0];
            return new(last.XMm + (along * x) - (across * y), last.YMm + (along * y) + (across * x));
        }

        var places = new List<SectionPoint>();
        var side = Math.Sign(end.Beside(last));
        for (var along = StepMm; along <= FarthestMm; along += StepMm)
        {
            var place = At(along);
            if (Math.Sign(end.Beside(place)) != side)
            {
                var (low, high) = (along - StepMm, along);
                for (var halvings = 0; halvings < 40; halvings++)
                {
                    var middle = (low + high) / 2;
                    (low, high) = Math.Sign(end.Beside(At(middle))) == side ? (middle, high) : (low, middle);
                }

                places.Add(At(high));
                return places;
            }

            places.Add(place);
        }

        return [];
    }
}
