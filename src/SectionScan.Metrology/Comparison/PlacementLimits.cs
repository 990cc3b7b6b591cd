using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Comparison;

/// <summary>How far a pattern may be moved from its start. Nothing given: as far as it takes.</summary>
public sealed record PlacementLimits
{
    /// <summary>No limit.</summary>
    public static PlacementLimits None { get; } = new();

    /// <summary>The longest move of the pattern's middle, mm; null without limit.</summary>
    public double? MostShiftMm { get; init; }

    /// <summary>The largest turn either way; null without limit.</summary>
    public Angle? MostTurn { get; init; }

    /// <summary>Places that must stay near fixed ones.</summary>
    public IReadOnlyList<PlacePlay> Plays { get; init; } = [];

    /// <summary>True when nothing is limited.</summary>
    public bool IsFree => MostShiftMm is null && MostTurn is null && Plays.Count == 0;
}
