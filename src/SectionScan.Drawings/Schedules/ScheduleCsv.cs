using System.Globalization;
using System.Text;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Schedules;

namespace SectionScan.Drawings.Schedules;

/// <summary>An area schedule as a table of commas: one line a station, each measure with its standard uncertainty; mm and mm².</summary>
public static class ScheduleCsv
{
    /// <summary>Writes the table.</summary>
    public static string Write(AreaSchedule schedule)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        var text = new StringBuilder(
            "station,distance_mm,tilt_deg,area_mm2,u_area_mm2,width_mm,u_width_mm,height_mm,u_height_mm,hydraulic_diameter_mm,u_hydraulic_diameter_mm,perimeter_mm,u_perimeter_mm\n");
        foreach (var station in schedule.Stations)
        {
            text.Append(CultureInfo.InvariantCulture, $"{station.Position.Station},{station.Position.DistanceMm},{station.Position.Tilt.Degrees:0.###}");
            foreach (var value in new[] { station.AreaMm2, station.WidthMm, station.HeightMm, station.HydraulicDiameterMm, station.PerimeterMm })
            {
                Append(text, value);
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    private static void Append(StringBuilder text, Estimate value) =>
        text.Append(CultureInfo.InvariantCulture, $",{value.Value:0.0000},{value.StandardUncertainty:0.0000}");
}
