using SectionScan.Drawings.Pages;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Cutting;
using SectionScan.Jobs.Demo;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Joints;
using SectionScan.Jobs.Progress;
using SectionScan.Jobs.Proving;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Comparison;
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
        var where = $"{source.Path}, joint of \"{joint.Port}\"";
        var stations = port.Schedule.Schedule.Stations.Select(station => station.Position.Station).ToList();
        var station = joint.Station ?? (port.Plan.Kind == PortKind.Intake ? stations[0] : stations[^1]);
        if (port.At(station) is not { } section)
        {
            return JobProblems.StationUnknown(where, station, stations);
        }

        var flow = port.Plan.Kind == PortKind.Intake ? JointFlow.Intake : JointFlow.Exhaust;
        var settings = new DigitiseSettings { LooksForOpenings = true, Lens = lens, PrintRatio = RunJob.PrintRatio(source) };
        var input = new FaceInput("manifold", [.. joint.Manifold.Select(source.PathOf)], [], null, FaceView.AsUsual);
        if (!input.Read(JointSide.Manifold, flow, settings).TryGet(out var read, out var problem))
        {
            return problem;
        }

        var manifold = read.Face;
        if (joint.Opening > manifold.Openings.Count)
        {
            return JobProblems.OpeningMissing(where, joint.Opening, manifold.Openings.Count);
        }

        var face = new JointFace(
            joint.Port, [new(FormattableString.Invariant($"{joint.Port}, station {station}"), section.Document.Section.Outline, section.Document.Section.ErrorSources)], [], true);
        var freedom = new JointFreedom { MostShiftMm = joint.ShiftMm, MostTurn = joint.TurnDeg is { } turn ? Angle.FromDegrees(turn) : null };
        var wanted = new JointOrder(face, manifold with { Openings = [manifold.Openings[joint.Opening - 1]] }, flow, freedom) { AllowedStepMm = joint.AllowedStepMm };
        return JointMatching.Match(wanted).Then(match =>
            MatchJoint.Write(match, Path.Combine(folder.FullPath, port.Folder), PaperSize.A4, order.Unit).Then<MatchedJoint>(files =>
            {
                written.AddRange(files);
                return new MatchedJoint(joint, station, match);
            }));
    }
}
