using SectionScan.Metrology.Comparison;
using SectionScan.Porting.TargetShapes;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.TargetShapes;

/// <summary>What a person chose for a target shape; the same for every station.</summary>
/// <param name="Shares">How far toward the reference, sector by sector.</param>
/// <param name="Alignment">How the reference is laid on the own section.</param>
public sealed record TargetShapeChoice(SectorShares Shares, AlignmentChoice Alignment)
{
    /// <summary>What the target is to measure, or null.</summary>
    public (LimitedMeasure Kind, double Value)? Wanted { get; init; }

    /// <summary>The reference's valve and the own one, diameters in mm, whose ratio the reference is scaled by; or null.</summary>
    public (double FromMm, double ToMm)? Valve { get; init; }

    /// <summary>Wider beside the guide by this, mm; zero for no.</summary>
    public double WidenMm { get; init; }

    /// <summary>The height of the guide in the section, mm; null for the middle of the marked guide axis, or where the section is
    /// widest.</summary>
    public double? WidenAtYMm { get; init; }

    /// <summary>Limits of measures.</summary>
    public IReadOnlyList<ShapeLimit> Limits { get; init; } = [];

    /// <summary>Distances to keep at every station.</summary>
    public IReadOnlyList<Clearance> Clearances { get; init; } = [];

    /// <summary>What lies behind the walls, station by station: the target keeps the limit of each from it, and twice u of its place more.</summary>
    public PortWalls Walls { get; init; } = PortWalls.None;

    /// <summary>Waves shorter than this are faired out, mm.</summary>
    public double FairingMm { get; init; } = TargetShapeOrder.UsualFairingMm;

    /// <summary>Name and version of the program.</summary>
    public string Program { get; init; } = "SectionScan";

    /// <summary>The settings in the command line's words, for the document.</summary>
    public IReadOnlyDictionary<string, string> SettingsInWords { get; init; } = new Dictionary<string, string>();
}
