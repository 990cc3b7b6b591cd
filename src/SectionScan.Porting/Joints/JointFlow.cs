namespace SectionScan.Porting.Joints;

/// <summary>Which way the gas passes a joint of port and manifold.</summary>
public enum JointFlow
{
    /// <summary>From the manifold (or carburettor) into the port.</summary>
    Intake,

    /// <summary>From the port into the manifold (or pipe).</summary>
    Exhaust,
}
