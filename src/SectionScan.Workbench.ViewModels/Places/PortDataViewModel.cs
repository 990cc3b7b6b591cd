using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Engines;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>Where the stations lie and what engine the port feeds; with them the port's schedule and gas speeds, own port, reference and
/// target beside each other, worked out in the background.</summary>
public sealed class PortDataViewModel(JobViewModel window, JobBenches benches) : WorkedPlaceViewModel(window)
{
    // What is typed before there is enough for an engine or a valve.
    private readonly Dictionary<string, double?> typed = new(StringComparer.Ordinal);
    private (PortData? Data, JobTarget? Ports, TargetSettings? Settings) madeOf;

    /// <summary>What is told.</summary>
    public PortData Data => Window.Job.PortData;

    /// <summary>What stands in the way of the last input, or null.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>The studies; null while too little is told, or until they are worked out.</summary>
    public PortStudies? Studies { get; private set; }

    /// <summary>The stations of both ports, each with its row as far as it is told.</summary>
    public IReadOnlyList<(int Station, JobStation? Told)> Stations => Both() is not { } ports ? [] : [.. ports.Pairs
        .Select(pair => pair.Own.Station).OfType<int>().Select(station => (station, Data.Stations.FirstOrDefault(each => each.Station == station)))];

    /// <summary>What a field of engine and valve holds, or null.</summary>
    public double? ValueOf(EngineField field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return field.Of(Data) ?? typed.GetValueOrDefault(field.Words);
    }

    /// <summary>The fields that must be filled before there is an engine, or a valve, of which something is filled already.</summary>
    public IReadOnlyList<EngineField> Missing => [.. EngineField.All.GroupBy(each => each.IsValve)
        .Where(group => group.Any(each => ValueOf(each) is not null))
        .SelectMany(group => group.Where(each => each.IsNeeded && ValueOf(each) is null))];

    /// <summary>Tells how far a station lies along the centreline; null takes it out of the table.</summary>
    public void SetDistance(int station, double? distanceMm) => Set("Tell where a station lies", data => data with
    {
        Stations =
        [
            .. data.Stations.Where(each => each.Station != station)
                .Concat(distanceMm is { } mm ? [(data.Stations.FirstOrDefault(each => each.Station == station) ?? new(station, mm)) with { DistanceMm = mm }] : [])
                .OrderBy(each => each.Station),
        ],
    });

    /// <summary>Tells how far the centreline has turned at a station, degrees.</summary>
    public void SetTurn(int station, double? turnDeg) => Set("Tell how the port turns", data => data with
    {
        Stations = [.. data.Stations.Select(each => each.Station == station ? each with { TurnDeg = turnDeg ?? 0 } : each)],
    });

    /// <summary>Tells where the bowl begins; null for nowhere.</summary>
    public void SetBowl(int? station) => Set("Tell where the bowl begins", data => data with { BowlFromStation = station });

    /// <summary>Fills a field of engine or valve. They are kept once all that they need is there; with nothing left they are forgotten.</summary>
    public void SetField(EngineField field, double? value)
    {
        ArgumentNullException.ThrowIfNull(field);
        var values = EngineField.All.Where(each => each.IsValve == field.IsValve).ToDictionary(each => each.Words, each => each == field ? value : ValueOf(each), StringComparer.Ordinal);
        typed[field.Words] = value;
        if (values.Values.All(each => each is null))
        {
            Set(field.IsValve ? "Forget the valve" : "Forget the engine", data => field.IsValve ? data with { Valve = null } : data with { Engine = null });
        }
        else if (EngineField.All.Any(each => each.IsNeeded && each.IsValve == field.IsValve && values[each.Words] is null))
        {
            Problem = null;
            OnPropertyChanged(string.Empty);
        }
        else if (field.IsValve)
        {
            Check(EngineRules.Check(EngineField.ValveOf(values, Data.Valve), Data.Engine?.BoreMm, "valve"), "Tell the valve", (data, valve) => data with { Valve = valve });
        }
        else
        {
            Check(EngineRules.Check(EngineField.EngineOf(values, Data.Engine), "engine"), "Tell the engine", (data, engine) => data with { Engine = engine });
        }
    }

    /// <summary>Takes engine, valve and stations from a job document, as the job command reads it.</summary>
    /// <param name="text">The document; not trusted.</param>
    /// <param name="name">What it was called; only ever shown.</param>
    public void Load(string text, string name)
    {
        if (JobDocumentFormat.Read(text, name).TryGet(out var job, out var problem))
        {
            typed.Clear();
            Set($"Load {name}", _ => PortData.From(job));
        }
        else
        {
            Say(problem);
        }
    }

    /// <summary>Refuses a file that is too long to be read.</summary>
    public void Refuse(string name) => Say(DecideProblems.FileTooLong(name));

    /// <inheritdoc/>
    protected override void Make()
    {
        var of = (Data, Both(), Window.Job.Target);
        if (of != madeOf)
        {
            Studies = of.Item2 is { } ports && of.Data.Stations.Count > 1 ? PortStudies.Of(ports, benches.Of(Window.Live)?.Targets(), of.Data) : null;
            madeOf = of;
        }
    }

    private JobTarget? Both() => benches.Of(Window.Live)?.Ports() is { } both && both.TryGet(out var ports, out _) ? ports : null;

    private void Check<T>(Result<T> checkedValue, string what, Func<PortData, T, PortData> change)
        where T : notnull
    {
        if (checkedValue.TryGet(out var value, out var problem))
        {
            typed.Clear();
            Set(what, data => change(data, value));
        }
        else
        {
            Say(problem);
        }
    }

    private void Say(Problem problem)
    {
        Problem = problem;
        OnPropertyChanged(string.Empty);
    }

    private void Set(string what, Func<PortData, PortData> change)
    {
        Problem = null;
        Window.Live?.Do(what, job => change(job.PortData) is var next && next == job.PortData ? job : job with { PortData = next });
    }
}
