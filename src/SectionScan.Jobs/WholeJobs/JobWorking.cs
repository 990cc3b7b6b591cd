using SectionScan.Drawings.Pages;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Cutting;
using SectionScan.Jobs.Demo;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Joints;
using SectionScan.Jobs.Progress;
using SectionScan.Jobs.Proving;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Joints;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Proof;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>Plans the cuts, proves the ports and matches the joints of a job, and writes their drawings.</summary>
/// <param name="order">The order.</param>
/// <param name="source">The job.</param>
/// <param name="ports">Its ports, measured.</param>
/// <param name="lens">The lens profile, or null.</param>
/// <param name="folder">The folder of all results.</param>
internal sealed class JobWorking(JobOrder order, JobFolder source, IReadOnlyList<StudiedPort> ports, LensProfile? lens, OutputFolder folder)
{
    private readonly List<string> written = [];

    /// <summary>The files written so far.</summary>
    public IReadOnlyList<string> Written => written;

    /// <summary>How many steps there are.</summary>
    public static int StepsOf(JobDocument job) => job.Plans.Count + job.Proofs.Count + job.Joints.Count;

    /// <summary>Does the work, or tells what stood in its way first.</summary>
    public Result<JobWork> Do(StepCounter steps) => Targets().Then(targets =>
        Each(source.Job.Plans, plan => Plan(plan, targets), "cut plan", steps).Then(plans =>
            Each(source.Job.Proofs, proof => Prove(proof, targets), "proof", steps).Then(proofs =>
                Each(source.Job.Joints, Match, "joint", steps).Then<JobWork>(joints => new JobWork(targets, plans, proofs, joints)))));

    private static Result<IReadOnlyList<TMade>> Each<TAsked, TMade>(
        IReadOnlyList<TAsked> asked, Func<TAsked, Result<TMade>> make, string name, StepCounter steps)
        where TMade : notnull => Result.All(asked.Select(each => make(each).Then<TMade>(made =>
        {
            steps.Report(name);
            return made;
        })));

    private Result<IReadOnlyList<SectionInput>> Targets() =>
        Result.All(source.Job.Targets.Select(name => SectionInput.Read(source.PathOf(name), string.Empty, TimeProvider.System)));

    private StudiedPort Port(string name) => ports.First(port => port.Plan.Name == name);

    private IReadOnlyList<SectionInput> Sections(string name, IReadOnlyList<SectionInput> targets) =>
        name == JobPlan.Targets && targets.Count > 0
            ? targets
            : [.. Port(name).Sections.Select(section => SectionInput.Of(FormattableString.Invariant($"{name}, station {section.Document.Section.Station}"), section.Document))];

    private Result<PlannedCut> Plan(JobPlan plan, IReadOnlyList<SectionInput> targets)
    {
        var walls = PortWalls.None;
        if (plan.KeepOuts is { } table && !WallsReport.ReadWalls(source.PathOf(table)).TryGet(out walls, out var problem))
        {
            return problem;
        }

        // Tags are laid beside slices by hand: neither place nor turn on the sheet means anything. A target lies in its own section's frame.
        var wantedSections = Sections(plan.Toward, targets);
        var alignment = wantedSections.All(section => section.IsExact) ? AlignmentMethod.AsPlaced : StationComparison.Alignment;
        var wanted = new CutPlanOrder(
            plan.Port, plan.Toward, alignment, plan.AllowanceMm, $"{plan.Port} to {plan.Toward}", walls, WallAssumptions.Usual, null, PaperSize.A4, order.Unit);
        return CutPlan.Of(wanted, Sections(plan.Port, targets), wantedSections).Then(made =>
            made.Write(Path.Combine(folder.FullPath, Port(plan.Port).Folder)).Then<PlannedCut>(files =>
            {
                written.AddRange(files);
                return new PlannedCut(plan, made);
            }));
    }

    private Result<ProvedPort> Prove(JobProof proof, IReadOnlyList<SectionInput> targets)
    {
        var terms = new ProofTerms(
            ToleranceBand.Of(new SectorTolerance(proof.InsideMm, proof.OutsideMm)), new(DecisionRule.UsualGuardFactor), AlignmentChoice.Usual);
        return PortProof.Of(Sections(proof.Against, targets), Sections(proof.Port, targets), terms).Then<ProvedPort>(made =>
            made.Proved.Count > 0 ? new ProvedPort(proof, made.Proved, made.Unproved) : made.Unproved[0]);
    }

    private Result<MatchedJoint> Match(JobJoint joint)
    {
        var port = Port(joint.Port);
        var job = new JointJob(
            joint.PortFace.Count == 0 ? null : new($"{joint.Port} face", Paths(joint.PortFace), Places(joint.PortStuds), joint.Pivot is { } at ? Place(at.Port) : null, joint.PortSeen),
            new("manifold", Paths(joint.Manifold), Places(joint.ManifoldStuds), joint.Pivot is { } own ? Place(own.Manifold) : null, joint.ManifoldSeen),
            joint.Gasket.Count == 0 ? null : new("gasket", Paths(joint.Gasket), Places(joint.GasketStuds), null, joint.PortSeen),
            port.Plan.Kind == PortKind.Intake ? JointFlow.Intake : JointFlow.Exhaust,
            new() { ClearanceMm = joint.ClearanceMm, MostShiftMm = joint.ShiftMm, MostTurn = joint.TurnDeg is { } turn ? Angle.FromDegrees(turn) : null },
            joint.AllowedStepMm, new() { LooksForOpenings = true, Lens = lens, PrintRatio = RunJob.PrintRatio(source), WantsPicture = true },
            Path.Combine(folder.FullPath, port.Folder), PaperSize.A4, order.Unit)
        {
            ManifoldOpening = joint.Opening ?? (joint.PortFace.Count == 0 ? 1 : null),
        };
        var matched = job.Port is not null ? MatchJoint.Run(job) : SectionAsFace(joint, port).Then(face => MatchJoint.Run(job, face));
        return matched.Then<MatchedJoint>(outcome =>
        {
            written.AddRange(outcome.Files);
            return new MatchedJoint(joint, outcome.Match, outcome.Photos);
        });
    }

    private Result<ReadFace> SectionAsFace(JobJoint joint, StudiedPort port)
    {
        var stations = port.Schedule.Schedule.Stations.Select(each => each.Position.Station).ToList();
        var station = joint.Station ?? (port.Plan.Kind == PortKind.Intake ? stations[0] : stations[^1]);
        return port.At(station) is { } section
            ? new ReadFace(
                new(joint.Port, [new(FormattableString.Invariant($"{joint.Port}, station {station}"), section.Document.Section.Outline, section.Document.Section.ErrorSources)], [], true),
                null, [])
            : JobProblems.StationUnknown($"{source.Path}, joint of \"{joint.Port}\"", station, stations);
    }

    private string[] Paths(IReadOnlyList<string> files) => [.. files.Select(source.PathOf)];

    private static SectionPoint[] Places(IReadOnlyList<IReadOnlyList<double>> places) => [.. places.Select(Place)];

    private static SectionPoint Place(IReadOnlyList<double> place) => new(place[0], place[1]);
}
