using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Measures;

/// <summary>One number that an outline has: its name, its kind and how it is worked out.</summary>
/// <param name="Name">The stable name in documents: camelCase, never translated, never reused.</param>
/// <param name="Label">The name in plain English, for a person.</param>
/// <param name="Dimension">The kind of quantity, and with it the unit.</param>
/// <param name="Definition">Works the number out. Must give a finite number for every polygon of finite corners, also for one that
/// crosses itself a little: the uncertainty is found by moving the corners.</param>
/// <param name="HangsOnFewPoints">True for a measure that hangs on few points, as a width does on the two outermost ones: noise of the
/// edge does not average out and may push it one way. False for one that every stretch of the outline adds to.</param>
public sealed record Measure(
    string Name,
    string Label,
    MeasureDimension Dimension,
    Func<PolygonFacts, double> Definition,
    bool HangsOnFewPoints = false)
{
    /// <summary>The measure of an outline, in mm, mm², mm⁴ or 1 as <see cref="Dimension"/> says.</summary>
    public double Of(Outline outline) => Definition(PolygonFacts.Of(outline));
}
