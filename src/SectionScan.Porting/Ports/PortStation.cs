using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Sections;

namespace SectionScan.Porting.Ports;

/// <summary>A section of a port at its place.</summary>
/// <param name="Position">Where it was cut.</param>
/// <param name="Section">The section as measured, in the cut plane.</param>
public sealed record PortStation(StationPosition Position, Section Section)
{
    // A slicing guide holds square within 2° (field guide, common practice, no source): rectangular.
    private const double TiltStandardUncertaintyDeg = 1.1547;

    /// <summary>The cause of error that stands for an askew cut.</summary>
    public const string TiltSource = "tilt of the cut";

    /// <summary>The outline square to the centreline, mm: the measured one with its height times cos(tilt), since a cut that leans by θ
    /// stretches one axis and the area by 1/cos θ.</summary>
    public Outline SquareOutline
    {
        get
        {
            var cos = Math.Cos(Position.Tilt.Radians);
            return cos == 1 ? Section.Outline : Section.Outline.Mapped(p => new(p.XMm, p.YMm * cos));
        }
    }

    /// <summary>What is known of the square outline's error: the section's own causes and the tilt of the cut.</summary>
    /// <value>Empty when nothing is known of the section's error.</value>
    public IReadOnlyList<OutlineErrorSource> ErrorSources
    {
        get
        {
            if (Section.ErrorSources.Count == 0)
            {
                return [];
            }

            // d(cos θ)/cos θ = −tan θ·dθ − dθ²/2: at square only the second term is left.
            var u = double.DegreesToRadians(TiltStandardUncertaintyDeg);
            var stretch = double.Hypot(Math.Tan(Position.Tilt.Radians) * u, u * u / 2);
            return [.. Section.ErrorSources, new(TiltSource, [new LinearEffect(0, 0, 0, stretch)], IsAssumed: true)];
        }
    }
}
