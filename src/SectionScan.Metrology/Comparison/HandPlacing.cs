using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Comparison;

/// <summary>How well a section lies that a person placed by hand, and what that does to its deviations.</summary>
/// <remarks>
/// A hand places to a step of the keys to either side, 0.1 mm in x and in y and 0.1° of turn, rectangular (JCGM 100:2008, 4.3.7); that a
/// person sees no finer is an assumption. A small move (x, y, turn θ about the centroid) changes the deviation at a place with the normal n and
/// the arm r from the centroid by n·(x, y) + θ·(r × n); the three are independent (JCGM 100:2008, 5.1.2).
/// </remarks>
public static class HandPlacing
{
    /// <summary>The step of a hand, mm: half the width of what its place can be.</summary>
    public const double StepMm = 0.1;

    /// <summary>The step of a turn by hand, degrees: half the width of what its turn can be.</summary>
    public const double StepDeg = 0.1;

    /// <summary>The standard uncertainty that the placing adds to a deviation, mm: the root mean square over all of them.</summary>
    /// <param name="samples">The deviations, in order round the reference.</param>
    /// <param name="about">What the section was turned about: its centroid.</param>
    public static double StandardUncertaintyMm(IReadOnlyList<DeviationSample> samples, SectionPoint about)
    {
        ArgumentNullException.ThrowIfNull(samples);
        var (place, turn) = (StepMm / Math.Sqrt(3), StepDeg * Math.PI / 180 / Math.Sqrt(3));
        var squares = Enumerable.Range(0, samples.Count).Average(i =>
        {
            var (x, y) = DeviationUncertainty.Normal(samples, i);
            var (armX, armY) = (samples[i].Reference.XMm - about.XMm, samples[i].Reference.YMm - about.YMm);
            var lever = (armX * y) - (armY * x);
            return (place * place * ((x * x) + (y * y))) + (turn * turn * lever * lever);
        });
        return Math.Sqrt(squares);
    }
}
