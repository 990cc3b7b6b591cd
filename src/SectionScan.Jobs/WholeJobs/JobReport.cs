using System.Globalization;
using SectionScan.Drawings.Schedules;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Summaries;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Demo;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Measures;
using SectionScan.Porting.Judgements;
using SectionScan.Porting.Ports;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>The report of a job. Every number and verdict in it comes from what was measured in this run.</summary>
/// <param name="outcome">What the job gave.</param>
/// <param name="program">Name and version of the program.</param>
/// <param name="unit">What is shown.</param>
internal sealed class JobReport(JobOutcome outcome, string program, LengthUnit unit)
{
    private readonly ShownUnits units = new(unit);
    private readonly JobTables tables = new(new ShownUnits(unit));
    private readonly StudiedPort first = outcome.Ports[0];

    /// <summary>Puts the report together.</summary>
    public SummaryPage Build()
    {
        var job = outcome.Source.Job;
        var work = new JobWorkReport(outcome.Work, unit);
        var sections = new List<SummarySection>
        {
            new("What was found", [.. Findings(), .. work.Findings()]),
            new("The photographs", [.. Photographs()]),
            new("Sections", [.. outcome.Ports.SelectMany(Sections)]),
            new("Area along the port", [.. Schedules()]),
        };
        if (outcome.Ports.Any(port => port.GasSpeed is not null))
        {
            sections.Add(new("Gas speed", [.. outcome.Ports.Where(port => port.GasSpeed is not null).SelectMany(GasSpeeds)]));
        }

        sections.AddRange(outcome.Comparisons.Select(each => new SummarySection(
            $"{each.Measured.Plan.Name} against {each.Reference.Plan.Name}", [.. Compared(each)])));
        sections.AddRange(work.Sections());
        sections.Add(new("Before anything is cut", [.. DemoPage.Cautions()]));
        sections.Add(new("Where the numbers come from", [.. Provenance()]));
        if (first.GasSpeed is not null)
        {
            sections.Add(new("Formulas and worked examples", [JobTables.Formulas()]));
        }

        return new($"{job.Head}: {job.Name}", Introduction(), sections)
        {
            Facts = [.. Facts()],
            Footer = $"{job.Head}, {job.Name}. {program}.",
        };
    }

    private IEnumerable<(string, string)> Facts()
    {
        var job = outcome.Source.Job;
        yield return ("Head", job.Head);
        yield return ("Port", string.Join("; ", outcome.Ports.Select(port =>
            $"{port.Plan.Name} ({(port.Plan.Kind == PortKind.Intake ? "intake" : "exhaust")}{(port.Plan.Stage is { } stage ? $", {stage}" : "")})")));
        yield return ("Date", job.Date ?? "not stated");
        if (job.Shop is { } shop)
        {
            yield return ("Shop", shop);
        }

        if (job.Engine is { } e)
        {
            yield return ("Engine", Text($"bore {Given(e.BoreMm)}, stroke {Given(e.StrokeMm)}, {e.Cylinders} cylinders, {e.RpmFrom:0} to {e.RpmTo:0} 1/min"));
        }

        foreach (var port in outcome.Ports.Where(port => port.Plan.Valve is not null))
        {
            var valve = port.Plan.Valve!;
            yield return ($"Valve, {port.Plan.Name}", $"{Given(valve.DiameterMm)}, stem {Given(valve.StemMm)}"
                + (valve.ThroatMm is { } throat ? $", throat {Given(throat)}" : "") + (valve.LiftMm is { } lift ? $", lift {Given(lift)}" : "")
                + (valve.SeatWidthMm is { } seat ? Text($", seat {Given(seat)} at {valve.SeatAngle.Degrees:0}°") : "") + (valve.GuideMm is { } guide ? $", guide {Given(guide)}" : ""));
        }
    }

    private string Introduction() => Text(
        $"{outcome.Ports.Sum(port => port.Sections.Count)} sections of {outcome.Ports.Count} {(outcome.Ports.Count == 1 ? "port" : "ports")}, measured from {outcome.Ports.Sum(port => port.Photos.Count)} {(outcome.Ports.Sum(port => port.Photos.Count) == 1 ? "photograph" : "photographs")}. The value behind ± is the expanded uncertainty, U = 2u, about 95 %. In drawings seen with the flow the roof is up.");

    private IEnumerable<SummaryBlock> Findings()
    {
        foreach (var note in outcome.Source.Job.Notes)
        {
            yield return new NoteBlock(note);
        }

        foreach (var compared in outcome.Comparisons)
        {
            foreach (var each in compared.Stations.Where(each => each.IsBeyond))
            {
                yield return new NoteBlock(
                    Text($"{compared.Measured.Plan.Name}, station {each.Station}: {units.Length(each.Result.Highest.DeviationMm)} ± {units.Length(each.DeviationExpandedUncertaintyMm)} {units.LengthName} beyond {compared.Reference.Plan.Name} at {DemoTables.Place(each.Result.Highest)}, over {100 * each.ShareBeyond:0} % of the outline. Metal that is gone does not come back: measure the wall there."),
                    IsCaution: true);
            }
        }

        // Ports of one valve and engine share findings. Sources stand with each further on.
        var outside = outcome.Ports.SelectMany(port => Judgements(port).Where(each => each.Level == JudgementLevel.Outside)
            .Select(each => (port.Plan.Name, Words: each.In(units.Words)))).GroupBy(each => each.Words);
        foreach (var finding in outside)
        {
            yield return new NoteBlock($"{string.Join(", ", finding.Select(each => each.Name))}: {finding.Key}", IsCaution: true);
        }

        foreach (var port in outcome.Ports)
        {
            var volume = port.Schedule.Volume.VolumeMm3;
            var least = port.Schedule.Schedule.Least;
            yield return new ParagraphBlock(Text(
                $"{port.Plan.Name}: volume {units.Volume(volume)} {units.VolumeName} {tables.Stretch(port)}; least section {units.Area(least.AreaMm2)} {units.AreaName} at station {least.Position.Station}."));
        }

        foreach (var compared in outcome.Comparisons)
        {
            yield return new ParagraphBlock(Text(
                $"{compared.Measured.Plan.Name} is on average {Math.Abs(compared.Schedules.MeanPercent):0.0} % {(compared.Schedules.MeanPercent < 0 ? "smaller" : "larger")} in area than {compared.Reference.Plan.Name}."));
        }
    }

    private IEnumerable<SummaryBlock> Photographs()
    {
        var photos = outcome.Ports.SelectMany(port => port.Photos.Select(photo => (Photo: photo.Digitised, Shows: port.Plan.Name)))
            .Concat(outcome.Work.Joints.SelectMany(joint => joint.Photos.Select(photo => (Photo: (DigitisedPhoto?)photo, Shows: $"joint of {joint.Asked.Port}"))));
        foreach (var (photo, shows) in photos.Where(each => each.Photo?.AnnotatedJpeg is not null))
        {
            yield return new PhotographBlock(
                photo!.AnnotatedJpeg, $"Photograph {photo.Photo.File} with the measured outlines drawn over it",
                $"{photo.Photo.File}, {shows}: the measured outlines over the photograph.");
        }
    }

    private IEnumerable<SummaryBlock> Sections(StudiedPort port)
    {
        yield return tables.Sections(port);
        yield return new DrawingBlock(
            [.. port.Sections.Select(section => SectionDrawing.Build(section.Document.Section.Outline, new(
                Text($"Station {section.Document.Section.Station}"), section.Measured[MeasureCatalogue.Width].Estimate, section.Measured[MeasureCatalogue.Height].Estimate)
                { AreaMm2 = section.Measured[MeasureCatalogue.Area].Estimate, Unit = unit, SaysTrueSize = false }))],
            $"The sections of {port.Plan.Name}, seen with the flow. The scale bar tells how large they are shown.");
    }

    private IEnumerable<SummaryBlock> Schedules()
    {
        yield return new DrawingBlock(
            [ScheduleDrawing.Area([.. outcome.Ports.Take(4).Select(port => port.Schedule.Schedule)], unit)],
            "Area square to the centreline against distance along it, stations numbered above. Thin lines and bars: U (k = 2).");
        foreach (var port in outcome.Ports)
        {
            yield return new DrawingBlock([ScheduleDrawing.Sizes(port.Schedule.Schedule, unit)], $"{port.Plan.Name}: sizes at the stations, with U (k = 2).");
            yield return tables.Schedule(port);
            yield return tables.Taper(port);
            foreach (var judgement in port.Schedule.Judgements)
            {
                yield return Note(judgement);
            }

            yield return tables.Volume(port);
        }
    }

    private IEnumerable<SummaryBlock> GasSpeeds(StudiedPort port)
    {
        var study = port.GasSpeed!;
        yield return new DrawingBlock(
            [GasSpeedDrawing.AlongPort(study.Speeds, port.Plan.Kind == PortKind.Intake, unit)],
            $"{port.Plan.Name}: mean speed while the cylinder draws, as if the gas followed the piston and did not give.");
        yield return tables.Speeds(port.Plan.Name, study);
        foreach (var judgement in study.Judgements)
        {
            yield return Note(judgement);
        }

        if (study.BreathingRpm is not null)
        {
            yield return JobTables.MachIndex(study);
        }

        if (study.Valve is not null)
        {
            yield return tables.ValveAreas(study);
        }

        if (study.Flow.Count > 0)
        {
            yield return tables.Bench(study);
        }
    }

    private IEnumerable<SummaryBlock> Compared(PortComparison compared)
    {
        yield return new DrawingBlock([ScheduleDrawing.Difference(compared.Schedules, unit)], "Area along the port in percent of the reference, with U (k = 2) as thin lines.");
        yield return tables.Differences(compared);
        yield return tables.Deviations(compared);
        foreach (var each in compared.Stations.Where(each => !each.Comparison.Alignment.ByHand.IsNone))
        {
            yield return new NoteBlock(Text($"Station {each.Station} was aligned by hand: {AlignmentWords.Of(each.Comparison.Alignment, unit)}. A hand places to ±{units.Length(HandPlacing.StepMm)} {units.LengthName} and ±{HandPlacing.StepDeg:0.0}° (an assumption); U counts it."));
        }

        yield return new DrawingBlock(
            [.. compared.Stations.Select(each => each.Comparison.DrawSmall(unit))],
            $"Station by station: {compared.Reference.Plan.Name} (full line) and {compared.Measured.Plan.Name} (thin dashes). The bands show the deviation enlarged: with a full edge outside the reference (+, metal already gone), with a dashed edge inside it (−, metal left). The figures stand at the highest and the lowest place.");
    }

    private IEnumerable<SummaryBlock> Provenance()
    {
        if (outcome.Lens is { } lens)
        {
            yield return new ParagraphBlock(Text(
                $"Lens profile from {lens.Photos.Count} photographs of the bare sheet: focal length {lens.Lens.FocalXPx:0.0} px, reprojection error {lens.RmsPx:0.000} px (root mean square)."));
        }

        yield return new ParagraphBlock(outcome.Source.Job.PrintRatio is { } ratio
            ? Text($"Print ratio of the target's check bars: {ratio[0]:0.0000} across, {ratio[1]:0.0000} up.")
            : "Nobody checked the print of the target: its scale is taken as true, with a wide uncertainty.");
        yield return tables.Photographs(outcome);
        yield return tables.Budget(first);
        foreach (var warning in outcome.Ports.SelectMany(JobTables.Warnings))
        {
            yield return new NoteBlock(warning);
        }
    }

    private static IEnumerable<Judgement> Judgements(StudiedPort port) => port.Schedule.Judgements.Concat(port.GasSpeed?.Judgements ?? []);

    private NoteBlock Note(Judgement judgement) =>
        new($"{judgement.In(units.Words)} ({judgement.Basis})", judgement.Level == JudgementLevel.Outside);

    // A length that a person gave, not rounded where it need not be.
    private string Given(double mm) => unit == LengthUnit.Inch ? Text($"{units.FromMm(mm):0.###} in") : Text($"{mm} mm");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
