namespace SectionScan.Porting.Cutting;

/// <summary>What may be done at a place of a wall.</summary>
public enum CutMark
{
    /// <summary>Rough to the allowance, then finish.</summary>
    Rough,

    /// <summary>Hardly more than the finishing allowance is left: finish only.</summary>
    FinishOnly,

    /// <summary>The wall is on the target as nearly as can be told: take nothing.</summary>
    Leave,

    /// <summary>The wall already lies beyond the target: take nothing; metal cannot be put back.</summary>
    Beyond,

    /// <summary>The wall behind may come under its limit: take nothing until it is measured.</summary>
    ThinWall,
}
