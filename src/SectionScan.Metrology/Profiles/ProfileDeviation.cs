using SectionScan.Metrology.Comparison;

namespace SectionScan.Metrology.Profiles;

/// <summary>The signed distance of one line from another.</summary>
public static class ProfileDeviation
{
    private const double NormalWindowMm = 1;

    /// <summary>The distance at even places of the reference to the nearest place of the measured line.</summary>
    /// <param name="reference">The reference.</param>
    /// <param name="measured">The measured line in the same frame.</param>
    /// <param name="isPositiveToLeft">True to count positive where the measured line lies to the left of the reference's way.</param>
    /// <param name="stepMm">The spacing, mm.</param>
    /// <returns>Places whose nearest place is no end of the measured line, in order.</returns>
    public static IReadOnlyList<ProfileSample> Samples(Profile reference, Profile measured, bool isPositiveToLeft, double stepMm = 0.5)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        var edges = new EdgeIndex(measured.Points, isClosed: false);
        var samples = new List<ProfileSample>();
        foreach (var (at, place) in reference.Even(stepMm))
        {
            var foot = edges.Nearest(place);
            if (foot.Point.DistanceTo(measured.First) < 1e-9 || foot.Point.DistanceTo(measured.Last) < 1e-9)
            {
                continue;
            }

            var (dx, dy) = reference.DirectionAt(at, NormalWindowMm);
            var toLeft = ((foot.Point.YMm - place.YMm) * dx) - ((foot.Point.XMm - place.XMm) * dy);
            samples.Add(new(at, place, (toLeft >= 0) == isPositiveToLeft ? foot.DistanceMm : -foot.DistanceMm));
        }

        return samples;
    }
}
