using System.Reflection;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Metrology.Comparison;
using SectionScan.Testing.Repository;
using SectionScan.Testing.Sections;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

/// <summary>No command of the workbench is without a test; here are those that no other test names.</summary>
public sealed class EveryCommandTests : ShopWithPlaces
{
    [Fact]
    public void Every_command_and_every_act_is_named_in_a_test()
    {
        var tests = string.Concat(Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, "tests", "SectionScan.Workbench.ViewModels.Tests"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains("/obj/", StringComparison.Ordinal)).Select(File.ReadAllText));
        var models = typeof(JobViewModel).Assembly.GetExportedTypes().Where(type => type.Name.EndsWith("ViewModel", StringComparison.Ordinal)).ToList();
        var acts = models.SelectMany(type => type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            .Where(property => property.PropertyType.IsAssignableTo(typeof(IRelayCommand))).Select(property => property.Name)
            .Concat(type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
                .Where(method => !method.IsSpecialName && method.ReturnType == typeof(void)).Select(method => method.Name))).Distinct().ToList();

        Assert.True(acts.Count > 60, $"only {acts.Count} acts were found");
        Assert.All(acts, act => Assert.Contains("." + act, tests, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Sliders_of_share_fairing_and_widening_try_without_a_step_and_set_with_one()
    {
        var window = SamplePort.WithTarget(Shop);
        var decide = new DecideViewModel(window, Shop.Desk, new(Shop.Desk));
        Places.Add(decide);
        decide.Begin();
        await decide.Working;
        var step = window.NextUndo;

        decide.TryFairing(20);
        Assert.Equal(20, decide.Settings.FairingMm);
        decide.TryWidening(2);
        Assert.Equal(2, decide.Settings.WidenMm);
        await decide.Working;
        Assert.Equal(step, window.NextUndo);

        decide.ForgetDraftCommand.Execute(null);
        Assert.Equal(window.Job.Target, decide.Settings);

        decide.SetFairing(999);
        Assert.Equal(("Set the fairing", 40.0), (window.NextUndo, window.Job.Target.FairingMm));
        decide.SetWidening(1.5);
        Assert.Equal(("Set the widening beside the guide", 1.5), (window.NextUndo, window.Job.Target.WidenMm));
        decide.SetShare(OutlineRegion.Floor, 40);
        Assert.Equal((40.0, 100.0), (window.Job.Target.SharesPercent[(int)OutlineRegion.Floor], window.Job.Target.SharesPercent[(int)OutlineRegion.Roof]));
        await decide.Working;
    }

    [Fact]
    public async Task A_run_is_stopped_after_the_photo_in_hand()
    {
        var window = Shop.WindowOnNewJob();
        using var digitise = new DigitiseViewModel(window);
        await Shop.TakeAsync(window, "c01");
        await Shop.TakeAsync(window, "c02");

        window.Live!.Changed += (_, _) =>
        {
            if (digitise.Run!.Current.Length > 0)
            {
                digitise.StopCommand.Execute(null);
            }
        };
        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);

        Assert.False(digitise.Run!.IsRunning);
        Assert.True(window.Job.Photos[0].IsDigitised);
        Assert.False(window.Job.Photos[1].IsDigitised);
    }

    [Fact]
    public void An_entry_is_shown_with_its_history_and_the_nearest_in_shape_come_first()
    {
        using (var library = SectionLibrary.Open(Shop.Desk.LibraryPath, TimeProvider.System).ValueOrThrow())
        {
            foreach (var (station, width) in new[] { (1, 40.0), (2, 20.0), (3, 41.0) })
            {
                library.Add(new(
                    new("Alpha", PortName.Parse("intake 1").ValueOrThrow(), station, "mould"), SampleSections.Document(SampleSections.Ellipse(width, 40), station), "", [], [])).ValueOrThrow();
            }
        }

        using var model = new LibraryViewModel(Shop.Desk, Shop.Units);
        model.SearchCommand.Execute(null);
        var first = model.Found.Single(card => card.Entry.Place.Station == 1).Entry.Id;

        model.ShowCommand.Execute(first);
        Assert.Single(model.Shown!.Revisions);

        model.FindAlikeCommand.Execute(first);
        Assert.Equal([3, 2], model.Found.Select(card => card.Entry.Place.Station));
        Assert.Equal("Nearest in shape first", model.Heading);
    }

    [Fact]
    public void Turn_and_bowl_are_told_and_files_too_long_are_refused()
    {
        var window = SamplePort.WithTarget(Shop);
        var along = new PortDataViewModel(window, new(Shop.Desk));
        var walls = new WallsViewModel(window);
        Places.AddRange([along, walls]);

        along.SetDistance(3, 50);
        along.SetTurn(3, 12);
        along.SetBowl(8);
        Assert.Equal(12, Assert.Single(window.Job.PortData.Stations).TurnDeg);
        Assert.Equal(8, window.Job.PortData.BowlFromStation);

        along.Refuse("long.job.json");
        walls.Refuse("long.csv");
        Assert.Equal(("file-too-long", "long.job.json"), (along.Problem!.Code, along.Problem.Where));
        Assert.Equal(("file-too-long", "long.csv"), (walls.Problem!.Code, walls.Problem.Where));
    }

    [Fact]
    public async Task The_sample_is_begun_from_the_first_page()
    {
        var start = new StartViewModel(Shop.Desk);

        await start.BeginSampleCommand.ExecuteAsync(null);

        Assert.Null(start.Problem);
        Assert.Equal("Sample: Bramble 480 twin", Assert.Single(start.Jobs()).Name);
        Assert.Equal(start.Begun, start.Jobs()[0].Id);
    }
}
