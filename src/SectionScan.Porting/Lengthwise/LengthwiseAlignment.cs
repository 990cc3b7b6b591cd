namespace SectionScan.Porting.Lengthwise;

/// <summary>How two lengthwise shapes are laid on each other.</summary>
public enum LengthwiseAlignment
{
    /// <summary>Seat on seat, middle and direction: shows what differs farther up the port.</summary>
    Seat,

    /// <summary>Face on face.</summary>
    Face,

    /// <summary>Both ends as well as they go, by least squares of their four corners.</summary>
    Both,
}
