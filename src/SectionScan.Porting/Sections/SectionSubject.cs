namespace SectionScan.Porting.Sections;

/// <summary>What an outline was taken from.</summary>
public enum SectionSubject
{
    /// <summary>A slice of a rubber mould lying on the target.</summary>
    Mould,

    /// <summary>An opening in a sawn or milled metal face.</summary>
    Opening,

    /// <summary>Nothing measured: a shape that a person settled on to work toward. Exact by definition.</summary>
    Target,
}
