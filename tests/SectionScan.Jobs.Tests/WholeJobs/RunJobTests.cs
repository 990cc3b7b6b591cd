using System.Text.RegularExpressions;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.WholeJobs;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Joints;
using SectionScan.Porting.Proof;
using SectionScan.Porting.Sections;
using SectionScan.Testing.Shapes;

namespace SectionScan.Jobs.Tests.WholeJobs;

/// <summary>A job of round ports, whose depths, verdicts and steps are differences of radii.</summary>
public sealed partial class RunJobTests : IDisposable
{
    private readonly ResultFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Plan_proof_and_joint_are_made_and_shown_in_the_report()
    {
        var run = RunJob.Run(new(Write(Asked), folder.PathOf("out"), "test")).ValueOrThrow();

        // From 15 to 15.5 mm; 0.3 mm are left for finishing. Station 2 is at 16 mm already: 0.5 mm too far.
        var work = run.Outcome.Work;
        var cuts = work.Plans[0].Plan.Stations;
        Assert.Equal(0.5, cuts[0].Cut.Places.Average(place => place.AtFinishMm), 0.02);
        Assert.Equal(0.2, cuts[0].Cut.Places.Average(place => place.NowMm), 0.02);
        Assert.Equal([Verdict.Conforms, Verdict.DoesNotConform], work.Proofs[0].Sections.Select(section => section.Proof.Verdict));
        Assert.Equal(0.5, work.Proofs[0].Sections[1].Proof.Highest.DeviationMm, 0.02);

        // A flange of 15.3 mm before a port of 15 mm: the port's edge faces the flow all round.
        Assert.Equal(0.3, work.Joints[0].Match.Openings[0].Highest.DeviationMm, 0.02);
        Assert.True(work.Joints[0].Match.IsCutNeeded);

        var html = File.ReadAllText(run.HtmlPath);
        foreach (var words in new[] { "Cut plan: own to exemplar", "Proof: own against exemplar", "station 2 does not conform", "faces the flow", "Order of work", "pressure-test", "The joint at its best place" })
        {
            Assert.Contains(words, html, StringComparison.Ordinal);
        }

        Assert.Contains(run.Record.Results.Keys, name => name.EndsWith(".template-port.dxf", StringComparison.Ordinal));
        Assert.Contains(run.Record.Results.Keys, name => name.Contains("cut-plan", StringComparison.Ordinal));
    }

    [Fact]
    public void In_inches_the_report_shows_inches_and_the_documents_stay_in_millimetres()
    {
        var path = Write(Asked + """
            , "engine": {"boreMm": 68, "strokeMm": 66, "rodMm": 120, "cylinders": 2, "rpmFrom": 1500, "rpmTo": 7000, "peakTorqueRpm": 5000, "peakPowerRpm": 6500}
            """);

        var metric = RunJob.Run(new(path, folder.PathOf("mm"), "test")).ValueOrThrow();
        var inch = RunJob.Run(new(path, folder.PathOf("in"), "test") { Unit = LengthUnit.Inch }).ValueOrThrow();

        // A circle of 15 mm: π·225 mm² = 706.86 mm² = 1.0956 in².
        Assert.Contains("706.", File.ReadAllText(metric.HtmlPath), StringComparison.Ordinal);
        Assert.Contains("1.095", File.ReadAllText(inch.HtmlPath), StringComparison.Ordinal);
        Assert.Contains("Area, in²", File.ReadAllText(inch.HtmlPath), StringComparison.Ordinal);

        // All that the reader sees, but for the examples that stand beside the formulas.
        var read = TagOrStyle().Replace(File.ReadAllText(inch.HtmlPath).Split("id=\"section-").SkipLast(1).Aggregate(string.Concat), " ");
        Assert.Contains("ft/s", read, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\bmm|\bcm³|[^f]m/s", System.Net.WebUtility.HtmlDecode(read));
        Assert.Equal(metric.Record.Results["own/own.port.json"], inch.Record.Results["own/own.port.json"]);
        Assert.Equal(metric.Record.Results["own/own.schedule.csv"], inch.Record.Results["own/own.schedule.csv"]);
    }

    [Fact]
    public void The_studs_of_a_joint_hold_the_manifold_within_their_clearance()
    {
        // Holes 0.5 mm to the right of where the studs are, 0.4 mm wider than these: 0.2 mm are won back, 0.3 mm stay. The flange is
        // 0.3 mm larger all round, so that the step runs from 0 to 0.6 mm.
        var opening = Joined("""
            "clearanceMm": 0.4, "portStuds": [[-30, 0], [30, 0]], "manifoldStuds": [[-29.5, 0], [30.5, 0]]
            """);

        Assert.Equal(0.6, opening.Highest.DeviationMm, 0.02);
        Assert.Equal(0, opening.Lowest.DeviationMm, 0.02);
    }

    [Fact]
    public void A_pivot_of_a_joint_stays()
    {
        // The pivot holds the flange 0.5 mm to the left; a turn about it cannot bring it back.
        var opening = Joined("""
            "pivot": {"port": [20, 0], "manifold": [20.5, 0]}
            """);

        Assert.Equal(0.8, opening.Highest.DeviationMm, 0.02);
        Assert.Equal(-0.2, opening.Lowest.DeviationMm, 0.02);
    }

    [Fact]
    public void The_gasket_of_a_joint_is_shown_where_it_stands_in_the_flow()
    {
        WriteCircle("gasket.csv", 14.8);

        // The port of 15 mm is cut to the flange's 15.3 mm; a gasket of 14.8 mm then stands 0.5 mm into the flow.
        var opening = Joined("""
            "gasket": ["gasket.csv"]
            """);

        Assert.Equal(0.5, Math.Abs(opening.Gasket!.DeepestInFlow!.DeviationMm), 0.02);
        Assert.Contains("gasket in the flow", File.ReadAllText(folder.PathOf(Path.Combine("out", "ports.report.html"))), StringComparison.Ordinal);
    }

    private OpeningMatch Joined(string freedom)
    {
        WriteCircle("face.csv", 15);
        var path = Write($$"""
            "joints": [{"port": "own", "manifold": ["flange.csv"], "portFace": ["face.csv"], {{freedom}}}]
            """);
        return RunJob.Run(new(path, folder.PathOf("out"), "test")).ValueOrThrow().Outcome.Work.Joints[0].Match.Openings[0];
    }

    private void WriteCircle(string name, double radius)
    {
        using var stream = File.Create(folder.PathOf(name));
        OutlineCsv.Write(AnalyticShapes.Circle(radius), stream);
    }

    [Theory]
    [InlineData("\"joints\": [{\"port\": \"own\", \"manifold\": [\"flange.csv\"], \"opening\": 2}]", "job-joint-opening")]
    [InlineData("\"joints\": [{\"port\": \"own\", \"manifold\": [\"flange.csv\"], \"station\": 9}]", "job-joint-station")]
    [InlineData("\"joints\": [{\"port\": \"own\", \"manifold\": []}]", "job-field-unusable")]
    [InlineData("\"joints\": [{\"port\": \"own\", \"manifold\": [\"flange.csv\"], \"gasket\": [\"none.csv\"]}]", "job-file-missing")]
    [InlineData("\"joints\": [{\"port\": \"own\", \"manifold\": [\"flange.csv\"], \"portFace\": [\"flange.csv\"], \"clearanceMm\": 0.2, \"portStuds\": [[-30, 0], [30, 0]], \"manifoldStuds\": [[-30, 0], [33, 0]]}]", "joint-studs-do-not-fit")]
    [InlineData("\"plans\": [{\"port\": \"own\", \"toward\": \"targets\"}]", "job-port-unknown")]
    [InlineData("\"proofs\": [{\"port\": \"own\", \"against\": \"exemplar\", \"outsideMm\": -1}]", "job-field-unusable")]
    public void Work_that_cannot_be_done_is_refused_by_name(string work, string code)
    {
        Assert.False(RunJob.Run(new(Write(work), folder.PathOf("out"), "test")).TryGet(out _, out var problem));

        Assert.Equal(code, problem.Code);
        Assert.False(File.Exists(folder.PathOf(Path.Combine("out", "ports.report.html"))));
    }

    [GeneratedRegex("<style>.*?</style>|<[^>]*>", RegexOptions.Singleline)]
    private static partial Regex TagOrStyle();

    private const string Asked = """
        "comparisons": [{"port": "own", "with": "exemplar"}],
        "plans": [{"port": "own", "toward": "exemplar", "allowanceMm": 0.3}],
        "proofs": [{"port": "own", "against": "exemplar", "insideMm": 0.7, "outsideMm": 0.1}],
        "joints": [{"port": "own", "manifold": ["flange.csv"]}]
        """;

    private string Write(string work)
    {
        WriteCircle("flange.csv", 15.3);
        var job = $$"""
            {"schema": "sectionscan/job/1", "head": "Bramble 480 twin", "name": "ports", {{work}},
             "ports": [{{Port("own", 15, 16)}}, {{Port("exemplar", 15.5, 15.5)}}]}
            """;
        File.WriteAllText(folder.PathOf("a.job.json"), job);
        return folder.PathOf("a.job.json");
    }

    private string Port(string name, params double[] radii)
    {
        for (var i = 0; i < radii.Length; i++)
        {
            var section = new Section(
                i + 1, SectionSubject.Mould, 6, AnalyticShapes.Circle(radii[i]), [new OutlineErrorSource("edge, systematic", [new NormalOffsetEffect(0.01)])], []);
            File.WriteAllText(
                folder.PathOf(FormattableString.Invariant($"{name}-{i + 1}.section.json")),
                SectionDocumentFormat.Write(new(section, null, [], null, null, null, new Dictionary<string, string>(), "test")));
        }

        return $$"""
            {"name": "{{name}}", "kind": "intake", "sections": ["{{name}}-1.section.json", "{{name}}-2.section.json"],
             "stations": [{"station": 1, "distanceMm": 0}, {"station": 2, "distanceMm": 30}]}
            """;
    }
}
