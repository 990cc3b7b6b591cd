using System.Reflection;
using System.Text.RegularExpressions;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Testing.Repository;
using SectionScan.Workbench.ViewModels.Desk;
using SectionScan.Workbench.ViewModels.Places;
using SectionScan.Workbench.ViewModels.Way;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

/// <summary>No state of the workbench is without a test; here are those that no other test names.</summary>
public sealed class EveryStateTests : ShopWithPlaces
{
    private static readonly Type[] Others = [typeof(DigitisingRun), typeof(PortStudies), typeof(TargetView), typeof(WayStep), typeof(UnitChoice), typeof(EngineField)];

    // What is there whatever the state: where things lie, and who a place belongs to.
    private static readonly string[] NoStates = ["Window", "FolderPath", "LibraryPath", "Path", "Stages", "All"];

    [Fact]
    public void Every_state_that_a_place_can_show_and_every_kind_of_it_is_named_in_a_test()
    {
        var tests = string.Concat(Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, "tests", "SectionScan.Workbench.ViewModels.Tests"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains("/obj/", StringComparison.Ordinal)).Select(File.ReadAllText));
        var types = typeof(JobViewModel).Assembly.GetExportedTypes();
        var states = types.Where(type => type.Name.EndsWith("ViewModel", StringComparison.Ordinal)).Concat(Others)
            .SelectMany(type => type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly))
            .Where(property => !property.PropertyType.IsAssignableTo(typeof(IRelayCommand)) && !property.PropertyType.IsAssignableTo(typeof(Delegate)) && property.Name != "EqualityContract")
            .Select(property => property.Name).Except(NoStates).Distinct().ToList();
        var kinds = types.Where(type => type.IsEnum).SelectMany(type => Enum.GetNames(type).Select(name => $"{type.Name}.{name}")).ToList();

        Assert.True(states.Count > 70, $"only {states.Count} states were found");
        Assert.Equal([], states.Where(state => !Regex.IsMatch(tests, $@"\.{state}\b")));
        Assert.Equal([], kinds.Where(kind => !tests.Contains(kind, StringComparison.Ordinal)));
    }

    [Fact]
    public void Each_place_of_the_way_is_done_by_what_is_done_there()
    {
        var window = SamplePort.WithTarget(Shop);
        var live = window.Live!;
        WayState At(Place place) => window.Way.Single(step => step.Place == place).State;
        string Standing(Place place) => window.Way.Single(step => step.Place == place).Standing;

        Assert.Equal((WayState.Next, "print not checked"), (At(Place.Prepare), Standing(Place.Prepare)));
        live.Do("Bars", job => job with { CheckBarAcrossMm = 200, CheckBarUpMm = 150 });
        Assert.Equal((WayState.Done, "print checked"), (At(Place.Prepare), Standing(Place.Prepare)));
        Assert.Equal((WayState.Done, "6 photos"), (At(Place.Capture), Standing(Place.Capture)));
        Assert.Equal((WayState.Next, "0 of 6 photos"), (At(Place.Digitise), Standing(Place.Digitise)));
        live.Do("Digitise", job => job with { Photos = [.. job.Photos.Select(photo => photo with { Runs = 1 })] });
        Assert.Equal((WayState.Done, "24 sections"), (At(Place.Digitise), Standing(Place.Digitise)));
        Assert.Equal((WayState.Next, "nothing chosen"), (At(Place.Compare), Standing(Place.Compare)));
        live.Do("Compare", job => job with { Comparison = new(job.Sections[0].Id, job.Sections[1].Id) });
        Assert.Equal((WayState.Done, "two sections chosen"), (At(Place.Compare), Standing(Place.Compare)));
        Assert.Equal((WayState.Done, "as cast toward exemplar"), (At(Place.Decide), Standing(Place.Decide)));
        Assert.Equal((WayState.Next, "plan and templates ready"), (At(Place.Cut), Standing(Place.Cut)));
        Assert.Equal(WayState.ToCome, At(Place.Prove));
        live.Do("Prove", job => job with { Proof = job.Proof with { Finished = JobPorts.KeyOf("finished") } });
        Assert.Equal((WayState.Done, WayState.Done, "finished proved"), (At(Place.Cut), At(Place.Prove), Standing(Place.Prove)));
        Assert.Equal(WayState.Next, At(Place.Archive));
        live.Do("Decide", job => job with { Target = new() });
        Assert.Equal((WayState.Next, "no ports chosen"), (At(Place.Decide), Standing(Place.Decide)));
        Assert.Equal("archive", window.Way[^1].Path);
    }

    [Fact]
    public void What_was_taken_back_can_be_done_again_until_something_else_is_done()
    {
        var window = Shop.WindowOnNewJob();
        Assert.Null(window.NextRedo);
        window.Live!.Do("Name the head", job => job with { Head = "Alpha" });
        window.UndoCommand.Execute(null);
        Assert.Equal(("Name the head", "Name the head"), (window.NextRedo, window.Live.NextRedo));
        window.RedoCommand.Execute(null);
        Assert.Null(window.NextRedo);
        window.UndoCommand.Execute(null);
        window.Live.Do("Name the port", job => job with { Port = "intake 1" });
        Assert.Null(window.NextRedo);
    }

    [Fact]
    public async Task The_paper_is_shown_fitted_or_at_true_size_on_a_screen_that_was_measured()
    {
        var window = SamplePort.WithTarget(Shop);
        var cut = new CutViewModel(window, new(Shop.Desk));
        Places.Add(cut);
        cut.Begin();
        await cut.Working;
        Assert.False(cut.IsWorking);
        Assert.Equal((false, 1.0, 0), (cut.IsTrueSize, cut.ScreenScale, cut.ShownAt));

        cut.ShowTrueSize(true);
        cut.SetScreenBar(80);
        cut.Show(3);
        Assert.Equal((true, 1.25, 3), (cut.IsTrueSize, cut.ScreenScale, cut.ShownAt));
        cut.SetScreenBar(1);
        Assert.Equal(("length-out-of-range", 1.25), (cut.Problem!.Code, cut.ScreenScale));
        cut.SetScreenBar(null);
        Assert.Equal((null, 1.0), (cut.Problem, cut.ScreenScale));
    }

    [Fact]
    public async Task Sections_without_a_station_wait_and_a_station_shown_at_decide_and_prove_is_kept()
    {
        var window = SamplePort.WithTarget(Shop);
        using var archive = new ArchiveViewModel(window, Shop.Desk);
        Assert.Equal((24, 0), (archive.Ready.Count, archive.WithoutStation));
        window.Live!.Do("Forget", job => job with
        {
            Sections = [.. job.Sections.Select((section, i) => i == 0 ? section with { Station = null } : section)],
            Proof = job.Proof with { Finished = JobPorts.KeyOf("finished") },
        });
        Assert.Equal((23, 1), (archive.Ready.Count, archive.WithoutStation));

        var benches = new JobBenches(Shop.Desk);
        var (decide, prove) = (new DecideViewModel(window, Shop.Desk, benches), new ProveViewModel(window, Shop.Desk, benches));
        Places.AddRange([decide, prove]);
        decide.Begin();
        prove.Begin();
        await Task.WhenAll(decide.Working, prove.Working);
        decide.Show(2);
        prove.Show(1);
        Assert.Equal((2, 1), (decide.ShownAt, prove.ShownAt));
        await Task.WhenAll(decide.Working, prove.Working);
    }

    [Fact]
    public void Lengths_of_the_engine_follow_the_window_and_a_count_is_whole()
    {
        Assert.Equal(
            ["Bore", "Stroke", "Valve diameter", "Valve stem", "Valve lift"],
            EngineField.All.Where(field => field.Unit == FieldUnit.Length).Select(field => field.Name));
        Assert.Equal("Cylinders", Assert.Single(EngineField.All, field => field.IsWhole).Words);
        Assert.Equal((3, 2), (EngineField.All.Count(field => field.IsValve), EngineField.All.Count(field => field.IsValve && field.IsNeeded)));
        Assert.All(EngineField.All, field => Assert.Null(field.Of(new())));
    }

    [Fact]
    public void The_form_of_a_wall_begins_with_what_is_usual_and_says_what_is_missing()
    {
        var window = SamplePort.WithTarget(Shop);
        using var walls = new WallsViewModel(window);
        Assert.False(walls.IsReading);
        Assert.NotNull(walls.LimitMm);
        walls.AddCommand.Execute(null);
        Assert.Equal("keep-out-incomplete", walls.Problem!.Code);
        (walls.Name, walls.XMm, walls.YMm, walls.SizeMm, walls.UMm, walls.IsMeasured) = ("oil drain", 20, 4, 3, 9, true);
        walls.AddCommand.Execute(null);
        Assert.Contains("standard uncertainty", walls.Problem!.What, StringComparison.Ordinal);
        walls.UMm = 0.3;
        walls.AddCommand.Execute(null);
        Assert.Null(walls.Problem);
        Assert.Equal("oil drain", Assert.Single(walls.Rows).Name);
    }

    [Fact]
    public async Task A_run_tells_how_far_it_has_come()
    {
        var window = Shop.WindowOnNewJob();
        using var digitise = new DigitiseViewModel(window);
        Assert.Equal((false, 0, 0, string.Empty), (digitise.Run!.IsRunning, digitise.Run.Done, digitise.Run.Total, digitise.Run.Current));
        await Shop.TakeAsync(window, "c01");
        var seen = new List<(bool IsRunning, int Done, int Total, string Current)>();
        window.Live!.Changed += (_, _) => seen.Add((window.Live.Digitising.IsRunning, window.Live.Digitising.Done, window.Live.Digitising.Total, window.Live.Digitising.Current));

        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);

        Assert.Contains((true, 0, 1, "c01.jpg"), seen);
        Assert.Equal((false, 1, 1, string.Empty), seen[^1]);
    }

    [Fact]
    public async Task Without_an_engine_there_are_no_gas_speeds_and_that_is_no_problem()
    {
        var window = SamplePort.WithTarget(Shop);
        var along = new PortDataViewModel(window, new(Shop.Desk));
        Places.Add(along);
        Assert.Empty(along.Data.Stations);
        along.SetDistance(1, 0);
        along.SetDistance(2, 20);
        Assert.Equal([0.0, 20.0], along.Data.Stations.Select(station => station.DistanceMm));
        along.Begin();
        await along.Working;
        Assert.Null(along.Studies!.SpeedsProblem);
        Assert.Null(along.Studies.Speeds(Drawings.Sections.LengthUnit.Millimetre));
    }
}
