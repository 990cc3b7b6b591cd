namespace SectionScan.Porting.Joints;

/// <summary>A part at a joint.</summary>
public enum JointSide
{
    /// <summary>The cylinder head's face.</summary>
    Port,

    /// <summary>The manifold's, carburettor's or pipe's flange.</summary>
    Manifold,
}
