namespace SectionScan.Metrology.Comparison;

/// <summary>A part of an outline in the trade's words: eight sectors of 45° around the centroid, each named by its middle.</summary>
public enum OutlineRegion
{
    /// <summary>The right wall, seen with the flow.</summary>
    Right,

    /// <summary>The corner between the right wall and the roof.</summary>
    RoofRightCorner,

    /// <summary>The roof.</summary>
    Roof,

    /// <summary>The corner between the roof and the left wall.</summary>
    RoofLeftCorner,

    /// <summary>The left wall, seen with the flow.</summary>
    Left,

    /// <summary>The corner between the left wall and the floor.</summary>
    FloorLeftCorner,

    /// <summary>The floor.</summary>
    Floor,

    /// <summary>The corner between the floor and the right wall.</summary>
    FloorRightCorner,
}
