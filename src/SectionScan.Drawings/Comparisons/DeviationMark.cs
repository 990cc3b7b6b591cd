using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Comparisons;

/// <summary>The signed deviation at one place of the reference outline.</summary>
/// <param name="Place">The place on the reference outline, mm, section frame.</param>
/// <param name="NormalX">x of the outward unit normal there.</param>
/// <param name="NormalY">y of the outward unit normal there.</param>
/// <param name="DeviationMm">How far the measured outline lies along the normal, mm: positive outside the reference.</param>
public sealed record DeviationMark(SectionPoint Place, double NormalX, double NormalY, double DeviationMm)
{
    /// <summary>The marks of deviations taken counter-clockwise round a whole outline.</summary>
    public static IReadOnlyList<DeviationMark> Of(IReadOnlyList<DeviationSample> samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        var marks = new List<DeviationMark>(samples.Count);
        for (var i = 0; i < samples.Count; i++)
        {
            // Counter-clockwise: the outward normal is the direction of travel turned to the right.
            var (before, after) = (samples[(i + samples.Count - 1) % samples.Count].Reference, samples[(i + 1) % samples.Count].Reference);
            var length = before.DistanceTo(after);
            marks.Add(new(samples[i].Reference, (after.YMm - before.YMm) / length, (before.XMm - after.XMm) / length, samples[i].DeviationMm));
        }

        return marks;
    }
}
