using System.Globalization;
using SectionScan.Drawings.Summaries;
using SectionScan.Jobs.Ports;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Documents;
using SectionScan.Porting.GasSpeeds;
using SectionScan.Porting.Schedules;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>The tables of a job's report. Each value stands with its expanded uncertainty (k = 2).</summary>
internal static class JobTables
{
    private const double Mm3PerCm3 = 1000;

    /// <summary>The stretch that a port's volume covers, in words.</summary>
    public static string Stretch(StudiedPort port) => port.Plan.LengthMm is { } length
        ? Text($"from face to seat ({length:0.#} mm)")
        : Text($"between its end stations ({port.Schedule.Schedule.LengthMm:0.#} mm)");

    /// <summary>The measures of the sections as they were cut.</summary>
    public static TableBlock Sections(StudiedPort port) => new(
        $"{port.Plan.Name}: sections as cut.",
        ["Station", "Area, mm²", "Width, mm", "Height, mm", "Perimeter, mm", "Hydraulic diameter, mm", "Circularity"],
        [
            .. port.Sections.Select(section => (IReadOnlyList<string>)
            [
                Text($"{section.Document.Section.Station}"), Of(section.Measured[MeasureCatalogue.Area].Estimate, "0.0"),
                Of(section.Measured[MeasureCatalogue.Width].Estimate), Of(section.Measured[MeasureCatalogue.Height].Estimate),
                Of(section.Measured[MeasureCatalogue.Perimeter].Estimate), Of(section.Measured[MeasureCatalogue.HydraulicDiameter].Estimate),
                Of(section.Measured[MeasureCatalogue.Circularity].Estimate, "0.000"),
            ]),
        ]);

    /// <summary>The schedule, square to the centreline.</summary>
    public static TableBlock Schedule(StudiedPort port) => new(
        $"{port.Plan.Name}: square to the centreline.",
        ["Station", "Distance, mm", "Tilt", "Area, mm²", "Width, mm", "Height, mm", "Hydraulic diameter, mm", "Perimeter, mm"],
        [
            .. port.Schedule.Schedule.Stations.Select(station => (IReadOnlyList<string>)
            [
                Text($"{station.Position.Station}"),
                Of(new(station.Position.DistanceMm, station.Position.DistanceStandardUncertaintyMm), "0.0"), Text($"{station.Position.Tilt.Degrees:0.#}°"),
                Of(station.AreaMm2, "0.0"), Of(station.WidthMm), Of(station.HeightMm), Of(station.HydraulicDiameterMm), Of(station.PerimeterMm),
            ]),
        ]);

    /// <summary>The taper from station to station.</summary>
    public static TableBlock Taper(StudiedPort port) => new(
        Text($"{port.Plan.Name}: taper. Beyond {ScheduleTaper.SuddenPercentPer10Mm:0} % for 10 mm of runner a change is flagged as sudden (common practice, no source){(port.Plan.BowlFromStation is { } bowl ? Text($"; the bowl begins at station {bowl}") : "")}."),
        ["From", "To", "Length, mm", "Change, mm²", "% for 10 mm", "Cone"],
        [
            .. ScheduleTaper.Intervals(port.Schedule.Schedule).Select(each => (IReadOnlyList<string>)
            [
                Text($"{each.From.Position.Station}"), Text($"{each.To.Position.Station}"), Text($"{each.LengthMm:0.0}"),
                Signed(each.AreaChangeMm2, "0.0"), Signed(each.PercentPer10Mm, "0.0"), Text($"{each.ConeAngle.Degrees:+0.0;−0.0;0.0}°"),
            ]),
        ]);

    /// <summary>The volume and where its uncertainty comes from.</summary>
    public static TableBlock Volume(StudiedPort port) => new(
        Text($"{port.Plan.Name}: volume {port.Schedule.Volume.VolumeMm3.Value / Mm3PerCm3:0.00} ± {port.Schedule.Volume.VolumeMm3.ExpandedUncertainty / Mm3PerCm3:0.00} cm³ {Stretch(port)}, by integrating the area along the centreline (Pappus and Guldin); its budget, u at k = 1."),
        ["Cause", "u, cm³"],
        [.. port.Schedule.Volume.Budget.Rows.Where(row => row.StandardUncertainty > 0).Select(row =>
            (IReadOnlyList<string>)[row.Source, Text($"{row.StandardUncertainty / Mm3PerCm3:0.000}")])]);

    /// <summary>Mean speeds at the stations.</summary>
    public static TableBlock Speeds(string name, GasSpeedStudy study) => new(
        $"{name}: mean gas speed in m/s at each engine speed in 1/min; U of each is in proportion to that of the area. Last line: mean piston speed, m/s.",
        ["Station", .. study.Speeds.Rpms.Select(rpm => Text($"{rpm:0}"))],
        [
            .. study.Speeds.Stations.Select(station => (IReadOnlyList<string>)
                [Text($"{station.Station}"), .. station.SpeedsMPerS.Select(speed => Text($"{speed.Value:0.0}"))]),
            ["piston", .. study.Speeds.Rpms.Select(rpm => Text($"{PistonMotion.MeanSpeedMPerS(study.Engine.StrokeMm, rpm):0.0}"))],
        ]);

    /// <summary>Taylor's index over the range.</summary>
    public static TableBlock MachIndex(GasSpeedStudy study) => new(
        Text($"Inlet Mach index after Taylor, mean flow coefficient {study.Coefficient:0.00}{(study.FlowCoefficient is null ? " (assumed)" : "")}: breathing suffers above 0.5 ({study.BreathingRpm!.Value.FallsFrom:0} 1/min), steeply above 0.6 ({study.BreathingRpm.Value.SteeplyFrom:0} 1/min)."),
        ["1/min", .. study.Speeds.Rpms.Select(rpm => Text($"{rpm:0}"))],
        [["index", .. study.Speeds.Rpms.Select(rpm => Text($"{InletMachIndex.Of(study.Engine, study.Valve!, study.Coefficient, rpm):0.000}"))]]);

    /// <summary>Areas at the valve.</summary>
    public static TableBlock ValveAreas(GasSpeedStudy study) => new(
        Text($"Areas at the valve: head {Porting.GasSpeeds.ValveAreas.HeadMm2(study.Valve!):0.0} mm², less stem {Porting.GasSpeeds.ValveAreas.HeadLessStemMm2(study.Valve!):0.0} mm²{(Porting.GasSpeeds.ValveAreas.ThroatMm2(study.Valve!) is { } throat ? Text($", throat {throat:0.0} mm²") : "")}; the curtain equals the head at {Porting.GasSpeeds.ValveAreas.FullLiftMm(study.Valve!):0.0} mm. The true least area needs the seat's width (Heywood, eq. 6.7 to 6.9)."),
        ["Lift, mm", "Curtain, mm²", "True least area, mm²"],
        [.. study.LiftsMm.Select(lift => (IReadOnlyList<string>)
        [
            Text($"{lift:0.0}"), Text($"{Porting.GasSpeeds.ValveAreas.CurtainMm2(study.Valve!, lift):0.0}"),
            Porting.GasSpeeds.ValveAreas.LeastMm2(study.Valve!, lift) is { } least ? Text($"{least:0.0}") : "–",
        ])]);

    /// <summary>Figures of the flow bench.</summary>
    public static TableBlock Bench(GasSpeedStudy study) => new(
        "On the flow bench: mean speed at the least and the largest section, ideal speed at the test pressure (air of 1.2 kg/m³), discharge coefficient on the valve's head, and the flow at 28 inH2O.",
        ["Lift, mm", "Flow, cfm", "At, inH2O", "Least section, m/s", "Largest section, m/s", "Ideal, m/s", "Coefficient", "At 28 inH2O, cfm"],
        [.. study.Flow.Select(flow => (IReadOnlyList<string>)
        [
            flow.LiftMm is { } lift ? Text($"{lift:0.0}") : "–", Text($"{flow.FlowCfm:0.0}"), Text($"{flow.TestPressureInH2O:0.0}"),
            Text($"{FlowBench.MeanMPerS(flow.FlowCfm, study.Speeds.Stations.Min(s => s.AreaMm2.Value)):0.0}"),
            Text($"{FlowBench.MeanMPerS(flow.FlowCfm, study.Speeds.Stations.Max(s => s.AreaMm2.Value)):0.0}"),
            Text($"{FlowBench.IdealMPerS(flow.TestPressureInH2O):0.0}"),
            study.Valve is { } valve ? Text($"{FlowBench.DischargeCoefficient(flow.FlowCfm, flow.TestPressureInH2O, Porting.GasSpeeds.ValveAreas.HeadMm2(valve) * valve.Count):0.000}") : "–",
            Text($"{FlowBench.AtPressure(flow.FlowCfm, flow.TestPressureInH2O, 28):0.0}"),
        ])]);

    /// <summary>Areas of two ports at their stations.</summary>
    public static TableBlock Differences(PortComparison compared) => new(
        $"Area of {compared.Measured.Plan.Name} against {compared.Reference.Plan.Name}, station by station, as cut.",
        ["Station", $"{compared.Reference.Plan.Name}, mm²", $"{compared.Measured.Plan.Name}, mm²", "Difference, mm²", "in %"],
        [.. compared.Stations.Select(each => (IReadOnlyList<string>)
        [
            Text($"{each.Station}"), Of(each.Reference.Measured[MeasureCatalogue.Area].Estimate, "0.0"), Of(each.Measured.Measured[MeasureCatalogue.Area].Estimate, "0.0"),
            Signed(each.AreaDifferenceMm2, "0.0"),
            Text($"{100 * each.AreaDifferenceMm2.Value / each.Reference.Measured[MeasureCatalogue.Area].Estimate.Value:+0.0;−0.0;0.0}"),
        ])]);

    /// <summary>The documents made elsewhere that belong to the job.</summary>
    public static TableBlock Documents(JobDocument job) => new(
        "Documents that belong to this job; each lies beside the job document.", ["Document", "What"],
        [
            .. job.Targets.Select(name => (IReadOnlyList<string>)[name, "target"]), .. job.Plans.Select(name => (IReadOnlyList<string>)[name, "cut plan"]),
            .. job.Proofs.Select(name => (IReadOnlyList<string>)[name, "proof"]),
        ]);

    /// <summary>Each photograph, what it was told, and how its target fits.</summary>
    public static TableBlock Photographs(JobOutcome outcome) => new(
        "Each photograph, what it was told, how the target fits, and its checksum.",
        ["Photo", "Port", "Thickness", "Corners", "Fit, px", "Camera", "Height", "Tilt", "SHA-256 begins"],
        [.. outcome.Ports.SelectMany(port => port.Photos.Select(photo => (IReadOnlyList<string>)
        [
            photo.Digitised!.Photo.File, port.Plan.Name, port.Plan.ThicknessMm is { } mm ? Text($"{mm:0.##} mm") : "–",
            Text($"{photo.Digitised.Target.CornersFound} of {photo.Digitised.Target.CornersExpected}"), Text($"{photo.Digitised.Target.RmsPx:0.00}"),
            photo.Digitised.Camera.Source, Text($"{photo.Digitised.Camera.HeightMm:0} mm"), Text($"{photo.Digitised.Camera.TiltDeg:0.0}°"),
            photo.Digitised.Photo.Sha256[..12],
        ]))]);

    /// <summary>Where the uncertainty of a port's areas comes from.</summary>
    public static TableBlock Budget(StudiedPort port)
    {
        var names = port.Sections.SelectMany(section => section.Measured[MeasureCatalogue.Area].Budget.Rows.Select(row => row.Source)).Distinct().ToList();
        return new(
            $"{port.Plan.Name}: where the uncertainty of each area comes from, u in mm² (k = 1).",
            ["Cause", .. port.Sections.Select(section => Text($"{section.Document.Section.Station}"))],
            [
                .. names.Select(name => (IReadOnlyList<string>)
                    [name, .. port.Sections.Select(section => section.Measured[MeasureCatalogue.Area].Budget.Rows.FirstOrDefault(row => row.Source == name) is { } row ? Text($"{row.StandardUncertainty:0.00}") : "–")]),
                ["together", .. port.Sections.Select(section => Text($"{section.Measured[MeasureCatalogue.Area].Estimate.StandardUncertainty:0.00}"))],
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

    private static string Of(Estimate estimate, string format = "0.00") => estimate.StandardUncertainty > 0
        ? $"{estimate.Value.ToString(format, CultureInfo.InvariantCulture)} ± {estimate.ExpandedUncertainty.ToString(format, CultureInfo.InvariantCulture)}"
        : estimate.Value.ToString(format, CultureInfo.InvariantCulture);

    private static string Signed(Estimate estimate, string format) =>
        $"{estimate.Value.ToString($"+{format};−{format};{format}", CultureInfo.InvariantCulture)} ± {estimate.ExpandedUncertainty.ToString(format, CultureInfo.InvariantCulture)}";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
