namespace SectionScan.Porting.TargetShapes;

/// <summary>The most that a measure of a target may be, and why.</summary>
/// <param name="Kind">Which measure.</param>
/// <param name="Most">The most, mm or mm².</param>
/// <param name="Note">The person's own words; may be empty.</param>
/// <remarks>As common practice, no source, wider than about 36 mm in one family of heads meant relocating an oil drain: such limits are
/// the person's, none is built in.</remarks>
public sealed record ShapeLimit(LimitedMeasure Kind, double Most, string Note);

/// <summary>What a limit can be set on.</summary>
public enum LimitedMeasure
{
    /// <summary>The extent along x, mm.</summary>
    Width,

    /// <summary>The extent along y, mm.</summary>
    Height,

    /// <summary>The area, mm².</summary>
    Area,
}
