using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Walls;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>What lies behind the walls: typed in, or read from the table that the walls command reads.</summary>
public sealed partial class WallsViewModel(JobViewModel window) : PlaceViewModel(window)
{
    private (string? File, Result<PortWalls>? Walls) read;

    /// <summary>What the next one is called.</summary>
    [ObservableProperty]
    public partial string Name { get; set; } = string.Empty;

    /// <summary>The station of the next one; null for every station.</summary>
    [ObservableProperty]
    public partial int? Station { get; set; }

    /// <summary>Where the next one lies in the own section, to the right, mm.</summary>
    [ObservableProperty]
    public partial double? XMm { get; set; }

    /// <summary>Where the next one lies in the own section, up, mm.</summary>
    [ObservableProperty]
    public partial double? YMm { get; set; }

    /// <summary>The radius of a passage, or the wall that was read, mm.</summary>
    [ObservableProperty]
    public partial double? SizeMm { get; set; }

    /// <summary>Standard uncertainty of its place, or of the reading, mm.</summary>
    [ObservableProperty]
    public partial double? UMm { get; set; } = 0.3;

    /// <summary>The wall to leave, mm.</summary>
    [ObservableProperty]
    public partial double? LimitMm { get; set; } = KeepOut.UsualLimitMm;

    /// <summary>True for a wall that a caliper read; false for a round passage.</summary>
    [ObservableProperty]
    public partial bool IsReading { get; set; }

    /// <summary>True when a passage was measured on this casting, not taken from a drawing.</summary>
    [ObservableProperty]
    public partial bool IsMeasured { get; set; }

    /// <summary>What stands in the way of the last input, or null.</summary>
    [ObservableProperty]
    public partial Problem? Problem { get; private set; }

    /// <summary>What is known of the walls, or why it cannot be read.</summary>
    public Result<PortWalls> Walls
    {
        get
        {
            if (Window.Live is not { } live)
            {
                return PortWalls.None;
            }

            if (read.Walls is null || read.File != live.Folder.FullPath + live.Job.WallsFile)
            {
                read = (live.Folder.FullPath + live.Job.WallsFile, JobWalls.Read(live.Folder, live.Job));
            }

            return read.Walls!;
        }
    }

    /// <summary>What is known of the walls, row by row.</summary>
    public IReadOnlyList<WallRow> Rows => !Walls.TryGet(out var walls, out _) ? [] :
    [
        .. walls.KeepOuts.Select((each, i) => new WallRow(
            i, false, each.Station, each.KeepOut.Name, WallRow.WordsOf(each.KeepOut.Shape), each.KeepOut.LimitMm,
            each.KeepOut.Source == KeepOutSource.Measured ? "measured" : "from a drawing")),
        .. walls.Readings.Select((each, i) => new WallRow(
            i, true, each.Station, each.Reading.Name, WallRow.WordsOf(each.Reading), each.Reading.LimitMm, "caliper")),
    ];

    /// <summary>Takes a table of walls and keep-outs in place of what is there.</summary>
    /// <param name="text">The table; not trusted.</param>
    /// <param name="name">What it was called; only ever shown.</param>
    public void Load(string text, string name)
    {
        if (PortWallsCsv.Read(text, name).TryGet(out var walls, out var problem))
        {
            Keep($"Load {name}", _ => walls);
        }

        Problem = problem ?? Problem;
    }

    /// <summary>Refuses a file that is too long to be read.</summary>
    public void Refuse(string name) => Problem = DecideProblems.FileTooLong(name);

    [RelayCommand]
    private void Add()
    {
        if (Fault() is { } fault)
        {
            Problem = DecideProblems.KeepOutIncomplete(fault);
            return;
        }

        var name = Name.Trim();
        var isKept = IsReading
            ? Keep($"Add the wall reading {name}", walls => walls with
            {
                Readings = [.. walls.Readings, (Station, new WallReading(name, new(XMm!.Value, YMm!.Value), new Estimate(SizeMm!.Value, UMm!.Value), LimitMm!.Value, string.Empty))],
            })
            : Keep($"Add {name}", walls => walls with
            {
                KeepOuts =
                [
                    .. walls.KeepOuts,
                    (Station, new KeepOut(
                        name, new KeepOutCircle(new(XMm!.Value, YMm!.Value), SizeMm!.Value), UMm!.Value, LimitMm!.Value,
                        IsMeasured ? KeepOutSource.Measured : KeepOutSource.Drawing, string.Empty)),
                ],
            });
        if (isKept)
        {
            (Name, XMm, YMm, SizeMm) = (string.Empty, null, null, null);
        }
    }

    [RelayCommand]
    private void Remove(WallRow row) => Keep($"Remove {row.Name}", walls => row.IsReading
        ? walls with { Readings = [.. walls.Readings.Where((_, i) => i != row.Index)] }
        : walls with { KeepOuts = [.. walls.KeepOuts.Where((_, i) => i != row.Index)] });

    private string? Fault() =>
        string.IsNullOrWhiteSpace(Name) ? "It has no name."
        : XMm is not { } x || YMm is not { } y || !(Math.Abs(x) <= 200 && Math.Abs(y) <= 200) ? "Its place is missing, or farther than 200 mm from the section's origin."
        : IsReading && SizeMm is not (> 0 and <= 50) ? "The wall that was read lies between 0 and 50 mm."
        : !IsReading && SizeMm is not (>= 0 and <= 200) ? "A passage needs its radius, 0 to 200 mm."
        : UMm is not (> 0 and <= 5) ? "Its standard uncertainty lies between 0 and 5 mm; a place known to ±0.5 mm has 0.3 mm."
        : LimitMm is not (> 0 and <= 20) ? "The wall to leave lies between 0 and 20 mm."
        : Station is < 0 ? "A station is zero or more."
        : null;

    private bool Keep(string what, Func<PortWalls, PortWalls> change)
    {
        Problem = null;
        if (Window.Live is not { } live)
        {
            return false;
        }

        Problem? problem = null;
        var isDone = live.Do(what, job =>
        {
            if (!JobWalls.Read(live.Folder, job).TryGet(out var before, out problem))
            {
                return job;
            }

            var walls = change(before);
            if (walls.KeepOuts.Count + walls.Readings.Count == 0)
            {
                return job with { WallsFile = null };
            }

            return JobWalls.Keep(live.Folder, walls).TryGet(out var file, out problem) ? job with { WallsFile = file } : job;
        });
        Problem = problem;
        return isDone && problem is null;
    }
}
