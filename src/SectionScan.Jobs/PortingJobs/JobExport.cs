using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.TargetShapes;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>Writes a job of the workbench as a job document with the files that it names: running it gives the same numbers again.</summary>
public static class JobExport
{
    private const int FewestStations = 2;
    private const string WallsName = "walls.csv";

    /// <summary>Writes the document, the sections as they stand after all corrections, the targets and what lies behind the walls.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="job">The job.</param>
    /// <param name="targets">Its targets; null while none are settled.</param>
    /// <param name="path">Where to.</param>
    /// <returns>The files' full paths, the document first; <c>job-without-stations</c> when no port can be told.</returns>
    public static Result<IReadOnlyList<string>> Write(JobFolder folder, PortingJob job, IReadOnlyList<SettledTarget>? targets, string path)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(job);
        var ports = Ports(job);
        if (ports.Count == 0)
        {
            return JobProblems.WithoutStations(job.Name);
        }

        var document = Document(job, ports, targets ?? []);
        return OutputFolder.Open(path).Then(open => open.WriteAll(
        [
            (FileNames.Safe(job.Name) + ".job.json", OutputFolder.Text(JobDocumentFormat.Write(document))),
            .. ports.SelectMany(port => port.Sections).Select(section => (section.Name, Copy(folder.PathOf(section.Section.DocumentFile)))),
            .. (targets ?? []).Select(target => (NameOf(target), OutputFolder.Text(SectionDocumentFormat.Write(
                target.Document, MeasureUnits.ForDocument(MeasuredOutline.Of(target.Document.Section.Outline, [])))))),
            .. job.WallsFile is { } walls ? new[] { (WallsName, Copy(folder.PathOf(walls))) } : [],
        ]));
    }

    /// <summary>True when there is a port to tell: two stations or more of one stage whose places are told.</summary>
    public static bool IsReady(PortingJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return Ports(job).Count > 0;
    }

    private static JobDocument Document(PortingJob job, List<ExportedPort> ports, IReadOnlyList<SettledTarget> targets)
    {
        ExportedPort? Of(string? key) => ports.FirstOrDefault(port => port.Key == key);
        var (own, finished) = (Of(job.Target.Own), Of(job.Proof.Finished));
        var against = job.Proof.Target == ProofSettings.SettledTarget ? (targets.Count > 0 ? JobPlan.Targets : null) : Of(job.Proof.Target)?.Name;
        var isProofTold = job.Proof.Terms().Alignment == new ProofSettings().Terms().Alignment && job.Proof.OtherMm == 0;
        var byHand = ByHand(job, ports);
        var compared = new (ExportedPort? Port, ExportedPort? With)[] { (Of(job.Comparison.SecondPort), Of(job.Comparison.FirstPort)), (own, Of(job.Target.Reference)) }
            .Where(pair => pair is { Port: not null, With: not null } && pair.Port != pair.With).Select(pair => (Port: pair.Port!.Name, With: pair.With!.Name))
            .Concat(byHand is { } told ? [(told.Port, told.With)] : []).Distinct()
            .Select(pair => new JobComparison(pair.Port, pair.With) { ByHand = byHand is { } hand && (hand.Port, hand.With) == pair ? [hand.Alignment] : null });
        return new(JobDocument.SchemaName, job.Head.Length > 0 ? job.Head : job.Name, job.Name, [.. ports.OrderByDescending(port => port == own).Select(port => port.Told(job.PortData))])
        {
            Notes =
            [
                "Written by the workbench. The sections are as they stood there, corrections by hand included.",
                .. byHand is null && !job.Comparison.ByHand.IsNone
                    ? new[] { "The alignment by hand is left out: a job document knows it between one station of two ports of the job only." } : [],
                .. finished is not null && !isProofTold ? new[] { "The proof is left out: a job document knows neither its alignment nor a further uncertainty." } : [],
            ],
            Engine = job.PortData.Engine,
            Comparisons = [.. compared],
            Targets = [.. targets.Select(NameOf)],
            Plans = own is not null && targets.Count > 0
                ? [new(own.Name, JobPlan.Targets) { AllowanceMm = job.Cut.AllowanceMm, KeepOuts = job.WallsFile is null ? null : WallsName }] : [],
            Proofs = finished is not null && against is not null && isProofTold
                ? [new(finished.Name, against) { InsideMm = job.Proof.InsideMm, OutsideMm = job.Proof.OutsideMm }] : [],
        };
    }

    /// <summary>The alignment by hand at Compare; null where there is none, or where it is not between one station of two exported ports.</summary>
    private static (string Port, string With, JobHandAlignment Alignment)? ByHand(PortingJob job, List<ExportedPort> ports)
    {
        var choice = job.Comparison;
        (ExportedPort Port, int Station)? At(string? id) => ports
            .SelectMany(port => port.Sections.Select(each => (Port: port, each.Section))).Where(each => each.Section.Id == id)
            .Select(each => ((ExportedPort, int)?)(each.Port, each.Section.Station!.Value)).FirstOrDefault();
        return !choice.ByHand.IsNone && At(choice.Measured) is { } measured && At(choice.Reference) is { } reference
            && measured.Port != reference.Port && measured.Station == reference.Station
            ? (measured.Port.Name, reference.Port.Name, new(measured.Station)
            {
                After = choice.Alignment,
                IsMirrored = choice.IsMirrored,
                RightMm = choice.ByHand.XMm,
                UpMm = choice.ByHand.YMm,
                TurnDeg = choice.ByHand.TurnDeg,
            })
            : null;
    }

    private static List<ExportedPort> Ports(PortingJob job) =>
    [
        .. job.Sections.GroupBy(job.StageOf)
            .Select((stage, i) => new ExportedPort(JobPorts.KeyOf(stage.Key), JobPorts.NameOf(JobPorts.KeyOf(stage.Key)), stage.Key,
            [
                .. stage.Where(section => job.PortData.Stations.Any(each => each.Station == section.Station)).OrderBy(section => section.Station)
                    .Select(section => (section, FormattableString.Invariant($"port-{i + 1}.station-{section.Station}.{section.Id}.section.json"))),
            ]))
            .Where(port => port.Sections.Count >= FewestStations),
    ];

    private static string NameOf(SettledTarget target) =>
        FormattableString.Invariant($"target.{(target.Own.Station is { } station ? $"station-{station}" : FileNames.Safe(target.Name))}.section.json");

    private static Action<Stream> Copy(string path) => stream => stream.Write(File.ReadAllBytes(path));

    /// <summary>A port with its sections and the names that their documents get.</summary>
    private sealed record ExportedPort(string Key, string Name, string Stage, IReadOnlyList<(JobSection Section, string Name)> Sections)
    {
        public JobPort Told(PortData data) => new(Name, data.Kind)
        {
            Stage = Stage.Length > 0 ? Stage : null,
            Sections = [.. Sections.Select(each => each.Name)],
            Stations = [.. data.Stations.Where(told => Sections.Any(each => each.Section.Station == told.Station))],
            BowlFromStation = Sections.Any(each => each.Section.Station == data.BowlFromStation) ? data.BowlFromStation : null,
            Valve = data.Valve,
            MeanFlowCoefficient = data.Engine is null ? null : data.MeanFlowCoefficient,
        };
    }
}
