using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Ports;

namespace SectionScan.Porting.Schedules;

/// <summary>One station of an area schedule: the measures of its section square to the centreline.</summary>
/// <param name="Position">Where it lies.</param>
/// <param name="Measured">Area, perimeter, width, height and hydraulic diameter with their budgets.</param>
/// <param name="ErrorSources">The causes of error, in the budgets' order.</param>
public sealed record ScheduleStation(
    StationPosition Position, MeasuredOutline Measured, IReadOnlyList<OutlineErrorSource> ErrorSources)
{
    /// <summary>The measures that a schedule holds.</summary>
    public static IReadOnlyList<Measure> Measures { get; } =
    [
        MeasureCatalogue.Area, MeasureCatalogue.Width, MeasureCatalogue.Height, MeasureCatalogue.HydraulicDiameter, MeasureCatalogue.Perimeter,
    ];

    /// <summary>Area square to the centreline, mm².</summary>
    public Estimate AreaMm2 => Measured[MeasureCatalogue.Area].Estimate;

    /// <summary>Width, mm.</summary>
    public Estimate WidthMm => Measured[MeasureCatalogue.Width].Estimate;

    /// <summary>Height, mm.</summary>
    public Estimate HeightMm => Measured[MeasureCatalogue.Height].Estimate;

    /// <summary>Hydraulic diameter 4A/P, mm.</summary>
    public Estimate HydraulicDiameterMm => Measured[MeasureCatalogue.HydraulicDiameter].Estimate;

    /// <summary>Perimeter, mm.</summary>
    public Estimate PerimeterMm => Measured[MeasureCatalogue.Perimeter].Estimate;
}
