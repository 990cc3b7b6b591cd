using System.Globalization;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Summaries;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Demo;
using SectionScan.Jobs.Ports;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.GasSpeeds;
using SectionScan.Porting.Schedules;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>The tables of a job's report. Each value stands with its expanded uncertainty (k = 2).</summary>
/// <param name="units">What is shown.</param>
internal sealed class JobTables(ShownUnits units)
{

    /// <summary>The stretch that a port's volume covers, in words.</summary>
    public string Stretch(StudiedPort port) => port.Plan.LengthMm is { } length
        ? $"from face to seat ({units.Distance(new(length, 0))} {units.LengthName})"
        : $"between its end stations ({units.Distance(new(port.Schedule.Schedule.LengthMm, 0))} {units.LengthName})";

    /// <summary>The measures of the sections as they were cut.</summary>
    public TableBlock Sections(StudiedPort port) => new(
        $"{port.Plan.Name}: sections as cut.",
        ["Station", Area, $"Width, {units.LengthName}", $"Height, {units.LengthName}", $"Perimeter, {units.LengthName}", $"Hydraulic diameter, {units.LengthName}", "Circularity"],
        [
            .. port.Sections.Select(section => (IReadOnlyList<string>)
            [
                Text($"{section.Document.Section.Station}"), units.Area(section.Measured[MeasureCatalogue.Area].Estimate),
                units.Length(section.Measured[MeasureCatalogue.Width].Estimate), units.Length(section.Measured[MeasureCatalogue.Height].Estimate),
                units.Length(section.Measured[MeasureCatalogue.Perimeter].Estimate), units.Length(section.Measured[MeasureCatalogue.HydraulicDiameter].Estimate),
                Of(section.Measured[MeasureCatalogue.Circularity].Estimate, "0.000"),
            ]),
        ]);

    /// <summary>The schedule, square to the centreline.</summary>
    public TableBlock Schedule(StudiedPort port) => new(
        $"{port.Plan.Name}: square to the centreline.",
        ["Station", $"Distance, {units.LengthName}", "Tilt", Area, $"Width, {units.LengthName}", $"Height, {units.LengthName}", $"Hydraulic diameter, {units.LengthName}", $"Perimeter, {units.LengthName}"],
        [
            .. port.Schedule.Schedule.Stations.Select(station => (IReadOnlyList<string>)
            [
                Text($"{station.Position.Station}"),
                units.Distance(new(station.Position.DistanceMm, station.Position.DistanceStandardUncertaintyMm)), Text($"{station.Position.Tilt.Degrees:0.#}°"),
                units.Area(station.AreaMm2), units.Length(station.WidthMm), units.Length(station.HeightMm), units.Length(station.HydraulicDiameterMm), units.Length(station.PerimeterMm),
            ]),
        ]);

    /// <summary>The taper from station to station.</summary>
    public TableBlock Taper(StudiedPort port) => new(
        Text($"{port.Plan.Name}: taper. Beyond {ScheduleTaper.SuddenPercentPer10Mm * units.Words.StretchMm / 10:0.#} % for {units.Words.Stretch} of runner a change is flagged as sudden (common practice, no source){(port.Plan.BowlFromStation is { } bowl ? Text($"; the bowl begins at station {bowl}") : "")}."),
        ["From", "To", $"Length, {units.LengthName}", $"Change, {units.AreaName}", $"% for {units.Words.Stretch}", "Cone"],
        [
            .. ScheduleTaper.Intervals(port.Schedule.Schedule).Select(each => (IReadOnlyList<string>)
            [
                Text($"{each.From.Position.Station}"), Text($"{each.To.Position.Station}"), units.Distance(new(each.LengthMm, 0)),
                units.SignedArea(each.AreaChangeMm2), Signed(each.PercentPer10Mm.Scaled(units.Words.StretchMm / 10), "0.0"), Text($"{each.ConeAngle.Degrees:+0.0;−0.0;0.0}°"),
            ]),
        ]);

    /// <summary>The volume and where its uncertainty comes from.</summary>
    public TableBlock Volume(StudiedPort port) => new(
        Text($"{port.Plan.Name}: volume {units.Volume(port.Schedule.Volume.VolumeMm3)} {units.VolumeName} {Stretch(port)}, by integrating the area along the centreline (Pappus and Guldin); its budget, u at k = 1."),
        ["Cause", $"u, {units.VolumeName}"],
        [.. port.Schedule.Volume.Budget.Rows.Where(row => row.StandardUncertainty > 0).Select(row =>
            (IReadOnlyList<string>)[row.Source, units.FineVolume(row.StandardUncertainty)])]);

    /// <summary>Mean speeds at the stations.</summary>
    public TableBlock Speeds(string name, GasSpeedStudy study) => new(
        $"{name}: mean gas speed in {units.SpeedName} at each engine speed in 1/min; U of each is in proportion to that of the area. Last line: mean piston speed, {units.SpeedName}.",
        ["Station", .. study.Speeds.Rpms.Select(rpm => Text($"{rpm:0}"))],
        [
            .. study.Speeds.Stations.Select(station => (IReadOnlyList<string>)
                [Text($"{station.Station}"), .. station.SpeedsMPerS.Select(speed => units.Speed(speed.Value))]),
            ["piston", .. study.Speeds.Rpms.Select(rpm => units.Speed(PistonMotion.MeanSpeedMPerS(study.Engine.StrokeMm, rpm)))],
        ]);

    /// <summary>Taylor's index over the range.</summary>
    public static TableBlock MachIndex(GasSpeedStudy study) => new(
        Text($"Inlet Mach index after Taylor, mean flow coefficient {study.Coefficient:0.00}{(study.FlowCoefficient is null ? " (assumed)" : "")}: breathing suffers above 0.5 ({study.BreathingRpm!.Value.FallsFrom:0} 1/min), steeply above 0.6 ({study.BreathingRpm.Value.SteeplyFrom:0} 1/min)."),
        ["1/min", .. study.Speeds.Rpms.Select(rpm => Text($"{rpm:0}"))],
        [["index", .. study.Speeds.Rpms.Select(rpm => Text($"{InletMachIndex.Of(study.Engine, study.Valve!, study.Coefficient, rpm):0.000}"))]]);

    /// <summary>Areas at the valve.</summary>
    public TableBlock ValveAreas(GasSpeedStudy study) => new(
        Text($"Areas at the valve: head {units.Area(Porting.GasSpeeds.ValveAreas.HeadMm2(study.Valve!))} {units.AreaName}, less stem {units.Area(Porting.GasSpeeds.ValveAreas.HeadLessStemMm2(study.Valve!))} {units.AreaName}{(Porting.GasSpeeds.ValveAreas.ThroatMm2(study.Valve!) is { } throat ? $", throat {units.Area(throat)} {units.AreaName}" : "")}; the curtain equals the head at {units.Length(Porting.GasSpeeds.ValveAreas.FullLiftMm(study.Valve!))} {units.LengthName}. The true least area needs the seat's width (Heywood, eq. 6.7 to 6.9)."),
        [$"Lift, {units.LengthName}", $"Curtain, {units.AreaName}", $"True least area, {units.AreaName}"],
        [.. study.LiftsMm.Select(lift => (IReadOnlyList<string>)
        [
            units.Length(lift), units.Area(Porting.GasSpeeds.ValveAreas.CurtainMm2(study.Valve!, lift)),
            Porting.GasSpeeds.ValveAreas.LeastMm2(study.Valve!, lift) is { } least ? units.Area(least) : "–",
        ])]);

    /// <summary>Figures of the flow bench.</summary>
    public TableBlock Bench(GasSpeedStudy study) => new(
        "On the flow bench: mean speed at the least and the largest section, ideal speed at the test pressure (air of 1.2 kg/m³), discharge coefficient on the valve's head, and the flow at 28 inH2O.",
        [$"Lift, {units.LengthName}", "Flow, cfm", "At, inH2O", $"Least section, {units.SpeedName}", $"Largest section, {units.SpeedName}", $"Ideal, {units.SpeedName}", "Coefficient", "At 28 inH2O, cfm"],
        [.. study.Flow.Select(flow => (IReadOnlyList<string>)
        [
            flow.LiftMm is { } lift ? units.Length(lift) : "–", Text($"{flow.FlowCfm:0.0}"), Text($"{flow.TestPressureInH2O:0.0}"),
            units.Speed(FlowBench.MeanMPerS(flow.FlowCfm, study.Speeds.Stations.Min(s => s.AreaMm2.Value))),
            units.Speed(FlowBench.MeanMPerS(flow.FlowCfm, study.Speeds.Stations.Max(s => s.AreaMm2.Value))),
            units.Speed(FlowBench.IdealMPerS(flow.TestPressureInH2O)),
            study.Valve is { } valve ? Text($"{FlowBench.DischargeCoefficient(flow.FlowCfm, flow.TestPressureInH2O, Porting.GasSpeeds.ValveAreas.HeadMm2(valve) * valve.Count):0.000}") : "–",
            Text($"{FlowBench.AtPressure(flow.FlowCfm, flow.TestPressureInH2O, 28):0.0}"),
        ])]);

    /// <summary>Areas of two ports at their stations.</summary>
    public TableBlock Differences(PortComparison compared) => new(
        $"Area of {compared.Measured.Plan.Name} against {compared.Reference.Plan.Name}, station by station, as cut.",
        ["Station", $"{compared.Reference.Plan.Name}, {units.AreaName}", $"{compared.Measured.Plan.Name}, {units.AreaName}", $"Difference, {units.AreaName}", "in %"],
        [.. compared.Stations.Select(each => (IReadOnlyList<string>)
        [
            Text($"{each.Station}"), units.Area(each.Reference.Measured[MeasureCatalogue.Area].Estimate), units.Area(each.Measured.Measured[MeasureCatalogue.Area].Estimate),
            units.SignedArea(each.AreaDifferenceMm2),
            Text($"{100 * each.AreaDifferenceMm2.Value / each.Reference.Measured[MeasureCatalogue.Area].Estimate.Value:+0.0;−0.0;0.0}"),
        ])]);

    /// <summary>How the walls of one port deviate from another's.</summary>
    public TableBlock Deviations(PortComparison compared) => new(
        $"Deviation of the wall from the reference's in {units.LengthName}, each section moved and turned to its best fit{(compared.Stations.Any(each => !each.Comparison.Alignment.ByHand.IsNone) ? ", but for those aligned by hand" : "")}: + outside (metal gone), − inside (metal left). Places are seen with the flow; angles count from right (0°) by way of the roof (90°).",
        ["Station", "Mean", "Rms", "Lowest", "there", "Highest", "there", "U", "Reads as"],
        [.. compared.Stations.Select(each => (IReadOnlyList<string>)
        [
            Text($"{each.Station}"), units.Deviation(each.Result.MeanDeviationMm), units.Length(each.Result.RmsDeviationMm),
            units.Deviation(each.Result.Lowest.DeviationMm), DemoTables.Place(each.Result.Lowest),
            units.Deviation(each.Result.Highest.DeviationMm), DemoTables.Place(each.Result.Highest),
            units.Length(each.DeviationExpandedUncertaintyMm), DemoTables.Reading(each),
        ])]);

    /// <summary>Each photograph, what it was told, and how its target fits.</summary>
    public TableBlock Photographs(JobOutcome outcome) => new(
        "Each photograph, what it was told, how the target fits, and its checksum.",
        ["Photo", "Shows", "Thickness", "Corners", "Fit, px", "Camera", "Height", "Tilt", "SHA-256 begins"],
        [
            .. outcome.Ports.SelectMany(port => port.Photos.Select(photo => Photograph(photo.Digitised!, port.Plan.Name, port.Plan.ThicknessMm))),
            .. outcome.Work.Joints.SelectMany(joint => joint.Photos.Select(photo => Photograph(photo, $"joint of {joint.Asked.Port}", null))),
        ]);

    /// <summary>Where the uncertainty of a port's areas comes from.</summary>
    public TableBlock Budget(StudiedPort port)
    {
        var names = port.Sections.SelectMany(section => section.Measured[MeasureCatalogue.Area].Budget.Rows.Select(row => row.Source)).Distinct().ToList();
        return new(
            $"{port.Plan.Name}: where the uncertainty of each area comes from, u in {units.AreaName} (k = 1).",
            ["Cause", .. port.Sections.Select(section => Text($"{section.Document.Section.Station}"))],
            [
                .. names.Select(name => (IReadOnlyList<string>)
                    [name, .. port.Sections.Select(section => section.Measured[MeasureCatalogue.Area].Budget.Rows.FirstOrDefault(row => row.Source == name) is { } row ? FineArea(row.StandardUncertainty) : "–")]),
                ["together", .. port.Sections.Select(section => FineArea(section.Measured[MeasureCatalogue.Area].Estimate.StandardUncertainty))],
            ]);
    }

    /// <summary>Every formula of the gas speeds, its source, and its example as worked out by hand and by this program.</summary>
    public static TableBlock Formulas() => new(
        "Every formula of the gas speeds with its source and an example that can be worked by hand (invented engine: bore 68, stroke 66, rod 120 mm, 7000 1/min, valve 33 mm, port 700 mm²).",
        ["Quantity", "Formula", "Source", "Example", "By hand", "Here"],
        [.. WorkedFormulas.All.Select(each => (IReadOnlyList<string>)
            [each.Quantity, each.Formula, each.Source, each.Example, Text($"{each.Expected:G7} {each.Unit}").TrimEnd(), Text($"{each.Computed:G7}")])]);

    /// <summary>What the person should know about a port's photos and sections.</summary>
    public static IEnumerable<string> Warnings(StudiedPort port) =>
        port.Photos.SelectMany(photo => photo.Digitised!.Warnings.Select(warning => $"{photo.Digitised.Photo.File}: {warning}"))
            .Concat(port.Sections.SelectMany(section => section.Document.Section.Warnings.Select(
                warning => Text($"{port.Plan.Name}, station {section.Document.Section.Station}: {warning}"))));

    private IReadOnlyList<string> Photograph(DigitisedPhoto photo, string shows, double? thicknessMm) =>
    [
        photo.Photo.File, shows, thicknessMm is { } mm ? $"{units.Length(mm)} {units.LengthName}" : "–",
        Text($"{photo.Target.CornersFound} of {photo.Target.CornersExpected}"), Text($"{photo.Target.RmsPx:0.00}"),
        photo.Camera.Source, $"{units.Distance(new(photo.Camera.HeightMm, 0))} {units.LengthName}", Text($"{photo.Camera.TiltDeg:0.0}°"), photo.Photo.Sha256[..12],
    ];

    private string Area => $"Area, {units.AreaName}";

    private string FineArea(double mm2) => units.FromMm2(mm2).ToString(units.Unit == LengthUnit.Inch ? "0.0000" : "0.00", CultureInfo.InvariantCulture);

    private static string Of(Estimate estimate, string format = "0.00") => estimate.StandardUncertainty > 0
        ? $"{estimate.Value.ToString(format, CultureInfo.InvariantCulture)} ± {estimate.ExpandedUncertainty.ToString(format, CultureInfo.InvariantCulture)}"
        : estimate.Value.ToString(format, CultureInfo.InvariantCulture);

    private static string Signed(Estimate estimate, string format) =>
        $"{estimate.Value.ToString($"+{format};−{format};{format}", CultureInfo.InvariantCulture)} ± {estimate.ExpandedUncertainty.ToString(format, CultureInfo.InvariantCulture)}";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
