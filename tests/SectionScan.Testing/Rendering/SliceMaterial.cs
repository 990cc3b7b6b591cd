namespace SectionScan.Testing.Rendering;

/// <summary>What a slice is cast from.</summary>
public enum SliceMaterial
{
    /// <summary>Blue moulding silicone.</summary>
    Blue,

    /// <summary>Green moulding silicone.</summary>
    Green,

    /// <summary>Amber urethane.</summary>
    Amber,

    /// <summary>Grey plaster.</summary>
    GreyPlaster,

    /// <summary>Black rubber.</summary>
    BlackRubber,

    /// <summary>Pink silicone.</summary>
    Pink,

    /// <summary>Near-white silicone, close to the paper's own colour.</summary>
    NearWhite,
}
