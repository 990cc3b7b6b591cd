namespace SectionScan.Porting.Schedules;

/// <summary>What two schedules of different length are laid against each other by.</summary>
public enum ScheduleAxis
{
    /// <summary>True distance along the centreline, mm; only the stretch that both have.</summary>
    Distance,

    /// <summary>Share of the length from the first to the last station.</summary>
    Share,
}
