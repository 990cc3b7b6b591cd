using System.Globalization;
using SectionScan.Drawings.Sections;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Ports;
using SectionScan.Jobs.Progress;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>From the photos of one port to its schedule and gas speeds.</summary>
internal static class PortStudying
{
    private const double Mm3PerCm3 = 1000;

    /// <summary>A port with the files written for it.</summary>
    public sealed record Studied(StudiedPort Port, IReadOnlyList<string> Files);

    public static Result<Studied> Study(
        JobOrder order, JobFolder source, JobPort plan, LensProfile? lens, OutputFolder folder, StepCounter steps, CancellationToken stop)
    {
        var name = FileNames.Safe(plan.Name);
        if (!Digitise(order, source, plan, lens, Path.Combine(folder.FullPath, name), steps, stop).TryGet(out var photos, out var problem)
            || !Sections(source, plan, photos).TryGet(out var sections, out problem)
            || !Document(source, plan, sections, order.Program).TryGet(out var document, out problem))
        {
            return problem;
        }

        var measured = document.Sections.Select(each => sections.First(section => ReferenceEquals(section.Document, each))).ToList();
        Estimate? burette = plan.Burette is { } filled ? new(filled.VolumeCm3 * Mm3PerCm3, filled.UCm3 * Mm3PerCm3) : null;
        return ScheduleStudy.Of(document.Port, plan.LengthMm, burette).Then(study => GasSpeed(source, plan, study).Then(speeds =>
            Write(Path.Combine(folder.FullPath, name), name, document, study, speeds.Study, order.Unit).Then<Studied>(files =>
                new Studied(
                    new(plan, name, photos, measured, document, study, speeds.Study),
                    [.. photos.SelectMany(photo => photo.Files), .. files]))));
    }

    private static Result<IReadOnlyList<PhotoOutcome>> Digitise(
        JobOrder order, JobFolder source, JobPort plan, LensProfile? lens, string folder, StepCounter steps, CancellationToken stop)
    {
        if (plan.Photos.Count == 0)
        {
            return Array.Empty<PhotoOutcome>();
        }

        var settings = new DigitiseSettings
        {
            ThicknessMm = plan.ThicknessMm,
            Shrinkage = plan.ShrinkagePercent is { } percent ? new(percent / 100, null) : null,
            LooksForOpenings = plan.ThicknessMm is null,
            Lens = lens,
            PrintRatio = RunJob.PrintRatio(source),
        };
        var digitise = new DigitiseOrder([.. plan.Photos.Select(source.PathOf)], settings, Words(source.Job, plan), order.Program, folder, IsInch: false);
        return DigitisePhotos.Run(digitise, new RunJob.Passed(steps), stop).Then(outcomes =>
            outcomes.FirstOrDefault(outcome => outcome.Problem is not null) is { } failed
                ? failed.Problem!
                : (Result<IReadOnlyList<PhotoOutcome>>)outcomes.ToList());
    }

    private static SortedDictionary<string, string> Words(JobDocument job, JobPort plan)
    {
        var words = new SortedDictionary<string, string>(StringComparer.Ordinal) { ["subject"] = plan.ThicknessMm is null ? "opening" : "mould" };
        if (plan.ThicknessMm is { } thickness)
        {
            words["thickness"] = thickness.ToString(CultureInfo.InvariantCulture);
        }

        if (plan.ShrinkagePercent is { } shrinkage)
        {
            words["shrinkage"] = shrinkage.ToString(CultureInfo.InvariantCulture);
        }

        if (job.PrintRatio is { } ratio)
        {
            words["print-ratio"] = string.Create(CultureInfo.InvariantCulture, $"{ratio[0]},{ratio[1]}");
        }

        if (job.Lens is { } lens)
        {
            words["lens"] = lens.Profile is { } file ? Path.GetFileName(file) : RunJob.LensName;
        }

        return words;
    }

    private static Result<IReadOnlyList<DigitisedDocument>> Sections(JobFolder source, JobPort plan, IReadOnlyList<PhotoOutcome> photos)
    {
        // A slice that was seen but not measured would be missing from the port without a word.
        foreach (var photo in photos)
        {
            if (photo.Digitised!.Refused.Count > 0)
            {
                return JobProblems.SectionRefused(photo.Path, photo.Digitised.Refused[0]);
            }
        }

        return PortFiles.ReadSections(plan.Sections.Select(source.PathOf)).Then<IReadOnlyList<DigitisedDocument>>(read =>
            photos.SelectMany(photo => photo.Documents).Concat(read.Zip(plan.Sections, (document, name) => new DigitisedDocument(
                document, MeasuredOutline.Of(document.Section.Outline, document.Section.ErrorSources), Path.GetFileName(name)))).ToList());
    }

    private static Result<PortDocument> Document(JobFolder source, JobPort plan, IReadOnlyList<DigitisedDocument> sections, string program)
    {
        var where = $"{source.Path}, port \"{plan.Name}\"";
        var table = plan.StationTable is { } file ? PortFiles.ReadStations(source.PathOf(file)) : JobDocumentRules.Stations(plan, where);
        return table.Then(stations => PortDocument.From(plan.Name, plan.Kind, [.. sections.Select(each => each.Document)], stations, program))
            .Then<PortDocument>(document => document with { Port = document.Port with { BowlFromStation = plan.BowlFromStation } });
    }

    private static Result<MaybeSpeeds> GasSpeed(JobFolder source, JobPort plan, ScheduleStudy study) => source.Job.Engine is not { } engine
        ? new MaybeSpeeds(null)
        : GasSpeedStudy.Of(study.Schedule, study.Port, engine, plan.Valve, plan.MeanFlowCoefficient, plan.Flow, source.Path)
            .Then<MaybeSpeeds>(speeds => new MaybeSpeeds(speeds));

    private static Result<IReadOnlyList<string>> Write(
        string folder, string name, PortDocument document, ScheduleStudy study, GasSpeedStudy? speeds, LengthUnit unit) =>
        OutputFolder.Open(folder).Then(open => open.Write(name + ".port.json", PortDocumentFormat.Write(document)))
            .Then(port => ScheduleFiles.Write(study, [], [], folder, unit).Then(schedule =>
                Speeds(folder, speeds, unit).Then<IReadOnlyList<string>>(speed => new[] { port }.Concat(schedule).Concat(speed).ToList())));

    private static Result<IReadOnlyList<string>> Speeds(string folder, GasSpeedStudy? speeds, LengthUnit unit) =>
        speeds is null ? Array.Empty<string>() : speeds.Write(folder, unit);

    /// <summary>Gas speeds or none: a result holds no null.</summary>
    private sealed record MaybeSpeeds(GasSpeedStudy? Study);
}
