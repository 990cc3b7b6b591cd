namespace SectionScan.Porting.Walls;

/// <summary>Where the place of a keep-out comes from.</summary>
public enum KeepOutSource
{
    /// <summary>A drawing, or another casting of the same pattern: the cores of this one may have lain elsewhere.</summary>
    Drawing,

    /// <summary>Measured on this casting, from this port: core shift is in it already.</summary>
    Measured,

    /// <summary>A caliper or wall gauge read the wall itself at this place of the port.</summary>
    Caliper,
}
