namespace SectionScan.Testing.Rendering;

/// <summary>A family of photographs, named for what makes them hard.</summary>
public enum HardCase
{
    /// <summary>A good photo: coloured slices of 5 to 8 mm, near overhead, soft light.</summary>
    Plain,

    /// <summary>Grey plaster.</summary>
    GreyPlaster,

    /// <summary>Black rubber, as dark as its own shadow.</summary>
    BlackRubber,

    /// <summary>Pink silicone.</summary>
    PinkSilicone,

    /// <summary>Silicone nearly as white as the paper.</summary>
    NearWhiteSilicone,

    /// <summary>The base is smaller than the face, or shifted under it.</summary>
    WallsLeanInward,

    /// <summary>The base is larger than the face, or shifted out from under it.</summary>
    WallsLeanOutward,

    /// <summary>10 to 15 mm thick, far from the image centre, 12 to 20 degrees of tilt.</summary>
    ThickFarFromAxis,

    /// <summary>A near lamp on one side.</summary>
    StrongGradient,

    /// <summary>One small lamp, low.</summary>
    HardShadow,

    /// <summary>One wide lamp, low.</summary>
    SoftShadow,

    /// <summary>The lamp mirrored in paper and face.</summary>
    Glare,

    /// <summary>Out of focus and shaken.</summary>
    Blur,

    /// <summary>A dim room.</summary>
    Noise,

    /// <summary>Something lies on one corner of the target.</summary>
    CoveredCorner,

    /// <summary>24 megapixels.</summary>
    TwentyFourMegapixels,

    /// <summary>The print is off by up to 1.5 % in each direction.</summary>
    PrintRatio,

    /// <summary>Slices and their tags at any angle.</summary>
    TurnedSlices,

    /// <summary>Air bubbles in face and edge, saw marks, burrs.</summary>
    BubblesAndBurrs,

    /// <summary>Openings whose inner wall is lit.</summary>
    LitOpening,

    /// <summary>A card that lies askew to openings and camera.</summary>
    CardAskew,
}
