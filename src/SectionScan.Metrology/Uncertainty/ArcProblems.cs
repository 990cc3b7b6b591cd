using System.Globalization;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>Why a floor or a roof has no radius to state.</summary>
public static class ArcProblems
{
    private const string Remedy = "Use the width at several heights to describe this shape instead.";

    /// <summary>Too few points on the stretch.</summary>
    public static Problem TooFewPoints(string where, int found, int needed) => new(
        "arc-too-few-points",
        string.Create(CultureInfo.InvariantCulture, $"The middle of the {where} has {found} points; a radius needs at least {needed}."),
        where,
        "Use an outline with more points.");

    /// <summary>The stretch is flat, or its arc too short for a radius.</summary>
    public static Problem TooFlat(string where, Angle arc) => new(
        "arc-too-flat",
        string.Create(
            CultureInfo.InvariantCulture,
            $"The middle of the {where} turns by {Math.Abs(arc.Degrees):0}° only; a radius needs at least {ArcRadius.ShortestArc.Degrees:0}°."),
        where,
        Remedy);

    /// <summary>The stretch bulges into the section.</summary>
    public static Problem Hollow(string where, double radiusMm) => new(
        "arc-hollow",
        string.Create(CultureInfo.InvariantCulture, $"The middle of the {where} bulges into the section, with a radius of {radiusMm:0.0} mm."),
        where,
        Remedy);

    /// <summary>The stretch is no arc of a circle.</summary>
    public static Problem NotRound(string where, double residualMm) => new(
        "arc-not-round",
        string.Create(CultureInfo.InvariantCulture, $"The middle of the {where} strays {residualMm:0.00} mm from the circle that fits it best."),
        where,
        Remedy);
}
