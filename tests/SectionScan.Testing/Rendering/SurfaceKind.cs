namespace SectionScan.Testing.Rendering;

/// <summary>What a pixel shows. A picture element's number is the kind plus 16 times the number of the solid or opening.</summary>
internal enum SurfaceKind
{
    Table,
    Paper,
    Ink,
    TagPaper,
    TagInk,
    Top,
    Wall,
    Bubble,
    Burr,
    CavityWall,
    CavityFloor,
}
