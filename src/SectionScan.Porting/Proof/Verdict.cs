namespace SectionScan.Porting.Proof;

/// <summary>What a measurement tells about a tolerance, its uncertainty counted.</summary>
public enum Verdict
{
    /// <summary>Within the tolerance by more than the guard band.</summary>
    Conforms,

    /// <summary>Too near a bound to tell.</summary>
    Undecided,

    /// <summary>Beyond the tolerance by more than the guard band.</summary>
    DoesNotConform,
}
