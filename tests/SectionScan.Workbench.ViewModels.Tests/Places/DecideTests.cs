using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Porting.TargetShapes;
using SectionScan.Testing.Repository;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

public sealed class DecideTests : ShopWithPlaces
{
    [Fact]
    public async Task Two_ports_of_the_job_give_a_target_for_every_station_and_the_choice_survives_the_program()
    {
        var window = SamplePort.WindowOn(Shop);
        var decide = Decide(window);
        Assert.Equal(["as cast (8 sections)", "exemplar (8 sections)", "finished (8 sections)"], decide.Options.Own.Select(port => port.Name));
        Assert.Null(decide.Ports);

        decide.ChooseOwn(JobPorts.KeyOf("as cast"));
        decide.ChooseReference(JobPorts.KeyOf("exemplar"));
        decide.ChooseAlignment(AlignmentMethod.AsPlaced);
        await decide.Working;

        for (var at = 0; at < 8; at++)
        {
            // The truth of the photos (sample-images/truth): true areas, exact polygons in one frame. A target of 100 % lies where the exemplar
            // lies, and nowhere inside the own wall.
            var view = decide.ViewAt(at)!.ValueOrThrow();
            Assert.Equal(TrueArea("p01", "p02", at + 1), view.ReferenceAreaMm2.Value, 0.02);
            Assert.Equal(TrueArea("p04", "p05", at + 1), view.OwnAreaMm2.Value, 0.02);
            Assert.InRange(view.Measures.Target.AreaMm2 / view.ReferenceAreaMm2.Value, 0.998, 1.004);
            Assert.Null(view.WorstWall);
        }

        var again = new JobViewModel(Shop.NewDesk(), Shop.Units);
        Places.Add(again);
        again.Open(window.Live!.Id);
        Assert.Equal(JobPorts.KeyOf("exemplar"), again.Job.Target.Reference);
        Assert.Equal(AlignmentMethod.AsPlaced, again.Job.Target.Alignment);
    }

    [Fact]
    public void Ports_that_were_exchanged_are_noticed_and_exchanged_back()
    {
        var window = SamplePort.WithTarget(Shop);
        var decide = Decide(window);
        Assert.False(decide.Ports!.ValueOrThrow().LooksExchanged);

        decide.ExchangePortsCommand.Execute(null);
        Assert.Equal(JobPorts.KeyOf("exemplar"), window.Job.Target.Own);
        Assert.True(decide.Ports!.ValueOrThrow().LooksExchanged);
        decide.ExchangePortsCommand.Execute(null);
        Assert.False(decide.Ports!.ValueOrThrow().LooksExchanged);
    }

    [Fact]
    public async Task A_slider_shows_at_once_what_it_would_do_and_only_letting_go_is_a_step_to_take_back()
    {
        var window = SamplePort.WithTarget(Shop);
        var decide = Decide(window);
        decide.Show(3);
        await decide.Working;
        var full = decide.Shown!.ValueOrThrow().Measures.Target.AreaMm2;
        var before = window.NextUndo;

        decide.TryAll(0);
        await decide.Working;
        var none = decide.Shown!.ValueOrThrow();
        Assert.Equal(none.Measures.Own.AreaMm2, none.Measures.Target.AreaMm2, 0.5);
        Assert.Equal(before, window.NextUndo);
        Assert.Equal(100, window.Job.Target.SharesPercent[0]);

        decide.TryShare(OutlineRegion.Roof, 50);
        await decide.Working;
        Assert.InRange(decide.Shown!.ValueOrThrow().Measures.Target.AreaMm2, none.Measures.Target.AreaMm2 + 1, full);

        decide.SetAll(50);
        await decide.Working;
        Assert.Equal("Set the share all round", window.NextUndo);
        var half = decide.Shown!.ValueOrThrow().Measures.Target.AreaMm2;
        Assert.InRange(half, none.Measures.Target.AreaMm2 + 1, full - 1);

        window.UndoCommand.Execute(null);
        await decide.Working;
        Assert.Equal(full, decide.Shown!.ValueOrThrow().Measures.Target.AreaMm2, 1e-9);
        window.RedoCommand.Execute(null);
        await decide.Working;
        Assert.Equal(half, decide.Shown!.ValueOrThrow().Measures.Target.AreaMm2, 1e-9);
    }

    [Fact]
    public async Task A_limit_holds_the_target_back_says_so_and_keeps_the_reason()
    {
        var window = SamplePort.WithTarget(Shop);
        var decide = Decide(window);
        await decide.Working;
        var free = decide.Shown!.ValueOrThrow().Measures;
        var most = Math.Round((free.Own.WidthMm + free.Target.WidthMm) / 2, 2);

        decide.SetLimit(LimitedMeasure.Width, most);
        decide.NoteLimit(LimitedMeasure.Width, " oil drain ");
        await decide.Working;

        var held = decide.Shown!.ValueOrThrow();
        Assert.InRange(held.Measures.Target.WidthMm, free.Own.WidthMm, most + 0.01);
        var limit = held.Target.Shape.Limits.Single(each => each.Kind == "width");
        Assert.True(limit.IsActive);
        Assert.Equal("oil drain", limit.Note);

        decide.SetLimit(LimitedMeasure.Width, 0.5);
        Assert.Equal("limit-unlikely", decide.Problem!.Code);
        Assert.Equal(most, window.Job.Target.Limits.Single().Most);
        decide.SetLimit(LimitedMeasure.Width, null);
        Assert.Null(decide.Problem);
        Assert.Empty(window.Job.Target.Limits);
    }

    [Fact]
    public async Task A_keep_out_keeps_its_wall_its_chance_is_told_and_it_can_be_taken_back()
    {
        var window = SamplePort.WithTarget(Shop);
        var decide = Decide(window);
        decide.ChooseAlignment(AlignmentMethod.AsPlaced);
        decide.Show(3);
        await decide.Working;
        var right = decide.Shown!.ValueOrThrow().Target.LaidReference.Outline.Points.ToArray().MaxBy(p => p.XMm);

        // A passage whose border lies 2 mm outside the exemplar's right wall: a target of 100 % would leave 2 mm; the limit and twice u are to be left.
        var walls = new WallsViewModel(window) { Name = "oil drain", Station = 4, XMm = right.XMm + 5, YMm = right.YMm, SizeMm = 3, UMm = 0.2, IsMeasured = true };
        Places.Add(walls);
        walls.AddCommand.Execute(null);
        Assert.Null(walls.Problem);
        Assert.Equal("oil drain", Assert.Single(walls.Rows).Name);
        Assert.Empty(walls.Name);
        await decide.Working;

        var view = decide.Shown!.ValueOrThrow();
        Assert.True(view.Target.Shape.Limits.Single(limit => limit.Kind == "keep-out").IsActive);
        Assert.Equal(2.5 + (2 * 0.2), view.WorstWall!.WallMm, 0.05);
        Assert.Equal("right wall", view.WorstWall.Side);
        Assert.InRange(view.WorstWall.ChanceUnderLimit, 0.001, 0.2);
        Assert.Null(decide.ViewAt(0)!.ValueOrThrow().WorstWall);
        Assert.Equal("oil drain", Assert.Single(view.KeepOuts).Name);
        Assert.Empty(decide.ViewAt(0)!.ValueOrThrow().KeepOuts);

        window.UndoCommand.Execute(null);
        await decide.Working;
        Assert.Empty(walls.Rows);
        Assert.Null(decide.Shown!.ValueOrThrow().WorstWall);
        window.RedoCommand.Execute(null);
        walls.RemoveCommand.Execute(walls.Rows[0]);
        Assert.Null(window.Job.WallsFile);
    }

    [Fact]
    public void What_is_said_of_a_wall_must_make_sense_and_a_table_is_read_as_the_walls_command_reads_it()
    {
        var window = SamplePort.WithTarget(Shop);
        var walls = new WallsViewModel(window);
        Places.Add(walls);

        walls.AddCommand.Execute(null);
        Assert.Equal("keep-out-incomplete", walls.Problem!.Code);
        (walls.Name, walls.XMm, walls.YMm, walls.SizeMm, walls.IsReading) = ("left", -10, 0, 0, true);
        walls.AddCommand.Execute(null);
        Assert.Equal("keep-out-incomplete", walls.Problem!.Code);
        Assert.Null(window.Job.WallsFile);

        walls.Load("nonsense", "walls.csv");
        Assert.Equal("walls-head", walls.Problem!.Code);
        walls.Load("kind,name,x_mm,y_mm,u_mm,radius_mm,wall_mm\nline,pocket,-20,30,0.3,,\nline,pocket,20,30,0.3,,\nreading,jacket,0,14,0.06,,4.2\n", "walls.csv");
        Assert.Null(walls.Problem);
        Assert.Equal(["pocket", "jacket"], walls.Rows.Select(row => row.Name));
    }

    [Fact]
    public async Task Stations_and_engine_show_the_areas_and_the_gas_speeds_along_the_port()
    {
        var window = SamplePort.WithTarget(Shop);
        var along = new PortDataViewModel(window, new(Shop.Desk));
        Places.Add(along);
        Assert.Null(along.Studies);

        along.Load("{}", "nonsense.json");
        Assert.NotNull(along.Problem);
        along.Load(await File.ReadAllTextAsync(Path.Combine(RepositoryFolder.Root, "sample-images", "as-cast.job.json")), "as-cast.job.json");
        await along.Working;

        Assert.Null(along.Problem);
        Assert.Equal(8, along.Stations.Count(each => each.Told is not null));
        Assert.Null(along.Studies!.Problem);
        Assert.Equal(8, along.Studies.Target!.ValueOrThrow().Schedule.Schedule.Stations.Count);
        Assert.Equal(TrueArea("p04", "p05", 1), along.Studies.Own.ValueOrThrow().Schedule.Schedule.Stations[0].AreaMm2.Value, 0.02);
        Assert.NotNull(along.Studies.Areas(Drawings.Sections.LengthUnit.Inch));
        Assert.NotNull(along.Studies.Speeds(Drawings.Sections.LengthUnit.Millimetre));

        // Mean speed = piston area × mean piston speed / port area (continuity), station 1 at the highest speed.
        var speeds = along.Studies.Target!.ValueOrThrow().Speeds!.ValueOrThrow().Speeds;
        var at = speeds.Rpms.ToList().IndexOf(6500);
        Assert.Equal(
            Math.PI * 92 * 92 / 4 * (2 * 72.2 / 1000 * 6500 / 60) / speeds.Stations[0].AreaMm2.Value, speeds.Stations[0].SpeedsMPerS[at].Value, 0.05);

        along.SetField(EngineField.All.Single(each => each.Words == "Bore, mm"), 1);
        Assert.NotNull(along.Problem);
        Assert.Equal(92, window.Job.PortData.Engine!.BoreMm);
        along.SetDistance(2, null);
        await along.Working;
        Assert.Equal([2], along.Studies!.LeftOut);
    }

    [Fact]
    public void An_engine_is_there_once_all_that_it_needs_is_filled()
    {
        var window = SamplePort.WithTarget(Shop);
        var along = new PortDataViewModel(window, new(Shop.Desk));
        Places.Add(along);
        var fields = EngineField.All.Where(each => !each.IsValve && each.IsNeeded).ToList();
        foreach (var (field, value) in fields.Zip(new double[] { 92, 72.2, 2, 1500, 6500 }).SkipLast(1))
        {
            along.SetField(field, value);
        }

        Assert.Null(window.Job.PortData.Engine);
        Assert.Equal([fields[^1]], along.Missing);
        along.SetField(fields[^1], 6500);
        Assert.Equal(92, window.Job.PortData.Engine!.BoreMm);
        Assert.Empty(along.Missing);
    }

    [Fact]
    public void A_port_that_is_gone_or_has_a_station_twice_says_so()
    {
        var window = SamplePort.WithTarget(Shop);
        var decide = Decide(window);
        window.Live!.Do("Remove", job => job.WithoutPhoto("p01").WithoutPhoto("p02"));
        Assert.False(decide.Ports!.TryGet(out _, out var gone));
        Assert.Equal("port-gone", gone.Code);

        decide.ChooseReference(JobPorts.KeyOf("finished"));
        window.Live.Do("Rename", job => job.With(job.Photo("p05")! with { Stage = "finished" }));
        Assert.False(decide.Ports!.TryGet(out _, out var twice));
        Assert.Equal("station-twice", twice.Code);
    }

    private static double TrueArea(string first, string second, int station) =>
        PolygonMoments.Of(Outline.From(new[] { first, second }.SelectMany(photo => SamplePhotos.TruthOf(photo).Sections)
            .Single(section => section.Station == station).Outline).ValueOrThrow().Points).AreaMm2;

    private DecideViewModel Decide(JobViewModel window)
    {
        var decide = new DecideViewModel(window, Shop.Desk, new(Shop.Desk));
        Places.Add(decide);
        decide.Begin();
        return decide;
    }
}
