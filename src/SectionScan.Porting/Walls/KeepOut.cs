namespace SectionScan.Porting.Walls;

/// <summary>Something that a cut must not reach, with how well its place is known.</summary>
/// <param name="Name">What it is in the person's words: "oil drain", "water jacket".</param>
/// <param name="Shape">Its shape in the section frame of the port being cut.</param>
/// <param name="PlaceStandardUncertaintyMm">u of its border along any direction, mm; more than zero.</param>
/// <param name="LimitMm">The wall below which caution is due, mm.</param>
/// <param name="Source">Where its place comes from: a drawing says nothing of how the cores of this casting lay.</param>
/// <param name="Note">The person's note; may be empty.</param>
public sealed record KeepOut(
    string Name, KeepOutShape Shape, double PlaceStandardUncertaintyMm, double LimitMm, KeepOutSource Source, string Note)
{
    /// <summary>The wall beside an oil passage below which caution is due, mm: about 0.1 in. Common practice, no source.</summary>
    public const double UsualLimitMm = 2.5;
}
