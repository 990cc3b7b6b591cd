using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Schedules;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Jobs.TargetShapes;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Judgements;
using SectionScan.Porting.Sections;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>Own port, reference and target along their length.</summary>
/// <param name="Own">The own port, or why it cannot be studied.</param>
/// <param name="Reference">The reference.</param>
/// <param name="Target">The target; null while it is not settled.</param>
public sealed record PortStudies(Result<JobStudy> Own, Result<JobStudy> Reference, Result<JobStudy>? Target)
{
    /// <summary>The first thing that stands in the way, or null.</summary>
    public Problem? Problem => new[] { Own, Reference, Target }.OfType<Result<JobStudy>>()
        .Select(study => study.TryGet(out _, out var problem) ? null : problem).FirstOrDefault(problem => problem is not null);

    /// <summary>The areas of all three along the port; null when none can be drawn.</summary>
    /// <param name="unit">What lengths are told in.</param>
    public Page? Areas(LengthUnit unit) => Known() is { Count: > 0 } known ? ScheduleDrawing.Area([.. known.Select(study => study.Schedule.Schedule)], unit) : null;

    /// <summary>The gas speeds of the target, or of the own port while there is no target; null without an engine.</summary>
    /// <param name="unit">What lengths and speeds are told in.</param>
    public Page? Speeds(LengthUnit unit) => SpeedsOf() is { } study ? GasSpeedDrawing.AlongPort(study.Speeds, study.Port.Kind == Porting.Ports.PortKind.Intake, unit) : null;

    /// <summary>What the schedule and the gas speeds of the target say, or of the own port while there is no target.</summary>
    public IReadOnlyList<Judgement> Judgements() =>
        Known() is { Count: > 0 } known ? [.. known[0].Schedule.Judgements, .. SpeedsOf()?.Judgements ?? []] : [];

    /// <summary>Why there are no gas speeds although an engine is told, or null.</summary>
    public Problem? SpeedsProblem => Known() is { Count: > 0 } known && known[0].Speeds is { } speeds && !speeds.TryGet(out _, out var problem) ? problem : null;

    /// <summary>Stations that have no section or no distance.</summary>
    public IReadOnlyList<int> LeftOut => Known() is { Count: > 0 } known ? known[0].LeftOut : [];

    /// <summary>Studies all three.</summary>
    internal static PortStudies Of(JobTarget ports, Result<IReadOnlyList<SettledTarget>>? targets, PortData data)
    {
        var (own, reference) = (new List<Section>(), new List<Section>());
        foreach (var pair in ports.Pairs)
        {
            own.Add(Of(pair.Own));
            reference.Add(Of(pair.Reference));
        }

        return new(
            JobStudy.Of("own port", own, data), JobStudy.Of("reference", reference, data),
            targets?.Then(all => JobStudy.Of("target", [.. all.Select(target => target.Document.Section)], data)));
    }

    private static Section Of(Jobs.Comparing.SectionInput input) => input.Document!.Section;

    private List<JobStudy> Known() =>
        [.. new[] { Target, Own, Reference }.OfType<Result<JobStudy>>().Select(study => study.TryGet(out var known, out _) ? known : null).OfType<JobStudy>()];

    private Jobs.Ports.GasSpeedStudy? SpeedsOf() =>
        Known() is { Count: > 0 } known && known[0].Speeds is { } speeds && speeds.TryGet(out var study, out _) ? study : null;
}
