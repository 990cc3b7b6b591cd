namespace SectionScan.Metrology.Comparison;

/// <summary>What a best fit may change; the rest stays as placed.</summary>
[Flags]
public enum AlignmentFreedom
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>A move to the left or right.</summary>
    X = 1,

    /// <summary>A move toward floor or roof.</summary>
    Y = 2,

    /// <summary>A turn. About the section's origin where a move is fixed.</summary>
    Rotation = 4,

    /// <summary>A change of size. About the section's origin where a move is fixed.</summary>
    Scale = 8,
}
