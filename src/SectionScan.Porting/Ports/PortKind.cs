namespace SectionScan.Porting.Ports;

/// <summary>Which way the gas goes.</summary>
public enum PortKind
{
    /// <summary>Into the cylinder.</summary>
    Intake,

    /// <summary>Out of the cylinder.</summary>
    Exhaust,
}
