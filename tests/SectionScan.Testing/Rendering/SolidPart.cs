namespace SectionScan.Testing.Rendering;

/// <summary>The part of a solid that a ray met.</summary>
internal enum SolidPart
{
    None,
    Top,
    Wall,
    Bubble,
    Burr,
}
