using System.Collections.Concurrent;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.TargetShapes;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>The two ports of a job that its target lies between, and what lies behind the walls.</summary>
/// <param name="Pairs">Own section and reference, station by station.</param>
/// <param name="Alone">Sections of a station that the other port lacks.</param>
/// <param name="Walls">What lies behind the walls of the own port.</param>
public sealed record JobTarget(IReadOnlyList<(SectionInput Own, SectionInput Reference)> Pairs, IReadOnlyList<SectionInput> Alone, PortWalls Walls)
{
    /// <summary>True when the reference is the smaller one at every station: porting takes metal away, so the two have likely been exchanged.</summary>
    public bool LooksExchanged => Pairs.All(pair => AreaMm2(pair.Reference) < AreaMm2(pair.Own));

    private readonly ConcurrentDictionary<(int At, AlignmentMethod Alignment, bool IsMirrored), Result<AlignedOutline>> laid = [];

    /// <summary>Reads both ports and puts them together.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="job">The job; both ports chosen.</param>
    /// <param name="libraryPath">The library's file.</param>
    /// <param name="time">The clock.</param>
    public static Result<JobTarget> Read(JobFolder folder, PortingJob job, string libraryPath, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (!JobPorts.Read(folder, job, job.Target.Own!, libraryPath, time).TryGet(out var own, out var problem)
            || !JobPorts.Read(folder, job, job.Target.Reference!, libraryPath, time).TryGet(out var reference, out problem)
            || !SectionFiles.Paired(own, reference).TryGet(out var paired, out problem))
        {
            return problem;
        }

        return JobWalls.Read(folder, job).Then<JobTarget>(walls => new JobTarget(paired.Pairs, paired.Alone, walls));
    }

    /// <summary>What lies behind the walls at one of the stations.</summary>
    public Result<IReadOnlyList<KeepOut>> KeepOuts(SectionInput own)
    {
        ArgumentNullException.ThrowIfNull(own);
        return Walls.At(own.Station, own.Outline);
    }

    /// <summary>Settles the target of one of the stations: each keep-out keeps the wall that is its limit, for certain. The reference is laid on the own
    /// section once for each alignment.</summary>
    /// <param name="at">Its place among the pairs.</param>
    /// <param name="settings">What is chosen.</param>
    /// <param name="program">Name and version of the program.</param>
    public Result<SettledTarget> Settle(int at, TargetSettings settings, string program)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var (own, reference) = Pairs[at];
        var choice = settings.Choice(Walls, program);
        return laid.GetOrAdd((at, settings.Alignment, settings.IsMirrored), _ => SettledTarget.Lay(own, reference, choice.Alignment))
            .Then(lies => SettledTarget.Of(own, reference, lies, choice));
    }

    private static double AreaMm2(SectionInput section) => PolygonMoments.SignedAreaMm2(section.Outline.Points);
}
