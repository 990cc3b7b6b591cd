using Bunit;
using Microsoft.Extensions.DependencyInjection;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Walls;
using SectionScan.Workbench.Parts;
using SectionScan.Workbench.Phones;
using SectionScan.Workbench.ViewModels.Desk;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.Tests.Parts;

/// <summary>Parts of places, each in the states that it has: nothing known, something known, refused; in mm and in inches.</summary>
public sealed class PanelTests : BunitContext
{
    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-panels-").FullName;
    private readonly UnitChoice units;
    private readonly JobViewModel window;
    private readonly WallsViewModel walls;
    private readonly PhoneDoor door = new(TimeProvider.System);

    public PanelTests()
    {
        var desk = new JobDesk(JobsFolder.Open(folder).ValueOrThrow(), Path.Combine(folder, "library.db"), [], "test", TimeProvider.System);
        units = new(folder);
        window = new(desk, units);
        window.Open(desk.Begin("Panels").ValueOrThrow());
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton(units);
        Services.AddSingleton(window);
        walls = new(window);
        Services.AddSingleton(walls);
        Services.AddSingleton(door);
    }

    [Fact]
    public void Walls_are_none_at_first_then_listed_in_the_unit_of_the_window_and_taken_away_again()
    {
        var panel = Render<WallsPanel>();
        Assert.Contains("Nothing is known of the walls.", panel.Find(".empty").TextContent, StringComparison.Ordinal);

        var known = new PortWalls([(4, new("oil drain", new KeepOutCircle(new(25.4, -12.7), 2.54), 0.3, 2.54, KeepOutSource.Drawing, string.Empty))], []);
        window.Live!.Do("Set up", job => job with { WallsFile = JobWalls.Keep(window.Live.Folder, known).ValueOrThrow() });
        panel.WaitForAssertion(() => Assert.Single(panel.FindAll("tbody tr")));
        var row = panel.Find("tbody tr");
        Assert.Equal("oil drain", row.QuerySelector("th")!.TextContent);
        Assert.Contains("radius 2.54 mm at (25.4, -12.7) mm", row.TextContent, StringComparison.Ordinal);
        Assert.Contains("2.54 mm", row.QuerySelector(".number")!.TextContent, StringComparison.Ordinal);

        units.Set(isInch: true);
        panel.Render();
        Assert.Contains("radius 0.1000 in at (1.000, -0.500) in", panel.Find("tbody tr").TextContent, StringComparison.Ordinal);
        Assert.Contains("0.100 in", panel.Find("tbody tr .number").TextContent, StringComparison.Ordinal);

        panel.Find("tbody tr button").Click();
        panel.WaitForAssertion(() => Assert.Empty(panel.FindAll("tbody tr")));
    }

    [Fact]
    public void A_wall_that_cannot_be_is_refused_in_the_unit_of_the_window()
    {
        units.Set(isInch: true);
        var panel = Render<WallsPanel>();

        walls.Name = "oil drain";
        panel.Find("form").Submit();

        panel.WaitForAssertion(() => Assert.Contains("farther than 7.87 in", panel.Find("[role=alert]").TextContent, StringComparison.Ordinal));
        Assert.DoesNotContain("mm", panel.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Sections_beside_each_other_share_one_scale_and_tell_their_differences()
    {
        var comparison = SectionComparison.Of(Circle("own", 20), Circle("exemplar", 21), new(AlignmentMethod.AsPlaced));

        var one = Render<SideBySide>(parts => parts.Add(part => part.Comparisons, [comparison]).Add(part => part.Caption, "Beside"));
        Assert.Single(one.FindAll("svg").Select(svg => svg.GetAttribute("viewBox")).Distinct());
        Assert.Equal(["Measure", "Reference", "Laid on it", "Difference"], one.FindAll("thead th").Select(head => head.TextContent));
        Assert.Contains("+2.", one.FindAll("tbody tr").Single(row => row.TextContent.Contains("Width", StringComparison.OrdinalIgnoreCase)).TextContent, StringComparison.Ordinal);

        var two = Render<SideBySide>(parts => parts.Add(part => part.Comparisons, [comparison, comparison]).Add(part => part.Caption, "Beside"));
        Assert.Equal(["Station", "Measure", "First port", "Second port", "Difference"], two.FindAll("thead th").Select(head => head.TextContent));
    }

    [Fact]
    public void A_phone_is_let_in_by_a_code_and_the_door_is_closed_again()
    {
        var panel = Render<PhonePanel>();
        Assert.Empty(panel.FindAll("img"));
        Assert.Contains("not encrypted", panel.Markup, StringComparison.Ordinal);

        panel.FindAll("button").Single(button => button.TextContent == "Let a phone in").Click();
        panel.WaitForAssertion(() => Assert.StartsWith("http://", panel.Find("code").TextContent, StringComparison.Ordinal), TimeSpan.FromSeconds(30));
        Assert.StartsWith("data:image/png;base64,", panel.Find("img").GetAttribute("src"), StringComparison.Ordinal);
        Assert.Contains("within 10 minutes", panel.Markup, StringComparison.Ordinal);

        panel.FindAll("button").Single(button => button.TextContent == "Close the door").Click();
        panel.WaitForAssertion(() => Assert.Empty(panel.FindAll("code")), TimeSpan.FromSeconds(30));
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        door.DisposeAsync().AsTask().Wait(TimeSpan.FromSeconds(10));
        walls.Dispose();
        window.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    private static SectionInput Circle(string name, double radiusMm) => new(
        name, Outline.From(Enumerable.Range(0, 360).Select(i => new SectionPoint(radiusMm * Math.Cos(i * Math.PI / 180), radiusMm * Math.Sin(i * Math.PI / 180)))).ValueOrThrow(),
        [new("edge, test", [new NormalOffsetEffect(0.02)])]);
}
