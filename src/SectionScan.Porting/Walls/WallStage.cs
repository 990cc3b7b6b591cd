namespace SectionScan.Porting.Walls;

/// <summary>Which outline a remaining wall belongs to.</summary>
public enum WallStage
{
    /// <summary>The port as it is now.</summary>
    Present,

    /// <summary>The port as it is to become: nothing is cut yet.</summary>
    Target,

    /// <summary>The port as it was measured after cutting.</summary>
    Finished,
}
