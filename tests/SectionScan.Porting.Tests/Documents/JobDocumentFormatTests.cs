using SectionScan.Porting.Documents;

namespace SectionScan.Porting.Tests.Documents;

public sealed class JobDocumentFormatTests
{
    private const string Port = """{"name": "own", "kind": "intake", "photos": ["p04.jpg"], "stations": [{"station": 1, "distanceMm": 0}, {"station": 2, "distanceMm": 20}]}""";

    private static readonly string Whole = Job(
        Port.Replace("\"photos\"", "\"valve\": {\"diameterMm\": 33, \"stemMm\": 5.5, \"liftMm\": 9, \"seatAngleDeg\": 45}, \"burette\": {\"volumeCm3\": 80}, \"photos\"", StringComparison.Ordinal),
        "\"engine\": {\"boreMm\": 68, \"strokeMm\": 66, \"cylinders\": 2, \"rpmFrom\": 1500, \"rpmTo\": 8000}, \"printRatio\": [1, 1], // read with a calliper\n");

    [Fact]
    public void A_job_written_by_hand_is_read_and_written_again_alike()
    {
        var job = JobDocumentFormat.Read(Whole, "a.job.json").ValueOrThrow();

        var again = JobDocumentFormat.Read(JobDocumentFormat.Write(job), "a.job.json").ValueOrThrow();

        Assert.Equal(JobDocumentFormat.Write(job), JobDocumentFormat.Write(again));
        Assert.Equal(33, job.Ports[0].Valve!.DiameterMm);
        Assert.Equal(45, job.Ports[0].Valve!.SeatAngle.Degrees, 9);
        Assert.Equal(0.3, job.Ports[0].Burette!.UCm3);
        Assert.Equal(2, job.Engine!.Cylinders);
    }

    [Theory]
    [InlineData("{", "job-unusable", "Line 1")]
    [InlineData("null", "not-a-job", "it is empty")]
    [InlineData("{\"schema\": \"x/1\", \"head\": \"h\", \"name\": \"n\", \"ports\": []}", "not-a-job", "x/1")]
    public void What_is_no_job_says_why(string text, string code, string words) => Refused(text, code, words);

    [Fact]
    public void A_slip_of_the_pen_is_named_with_its_line() =>
        Refused(Job(Port.Replace("photos", "fotos", StringComparison.Ordinal)), "job-unusable", "the name 'fotos' is not known here");

    [Fact]
    public void A_missing_name_is_named() => Refused("{\"schema\": \"sectionscan/job/1\", \"name\": \"n\", \"ports\": []}", "job-unusable", "head");

    [Fact]
    public void Faults_in_the_ports_are_told_one_at_a_time()
    {
        Refused(Job(Port + "," + Port), "job-port-twice", "\"own\"");
        Refused(Job(Port.Replace("p04.jpg", "../p04.jpg", StringComparison.Ordinal)), "job-file-outside", "../p04.jpg");
        Refused(Job(Port.Replace("p04.jpg", "/etc/p04.jpg", StringComparison.Ordinal)), "job-file-outside", "/etc/p04.jpg");
        Refused(Job(Port.Replace("\"p04.jpg\"", "", StringComparison.Ordinal)), "job-field-unusable", "photos");
        Refused(Job(Port.Replace("20}", "0}", StringComparison.Ordinal)), "stations-out-of-order", "Station 2");
        Refused(Job(Port.Replace("\"stations\"", "\"stationTable\": \"s.csv\", \"stations\"", StringComparison.Ordinal)), "job-stations-missing", "once");
        Refused(Job(Port, "\"comparisons\": [{\"port\": \"own\", \"with\": \"exemplar\"}],"), "job-port-unknown", "\"exemplar\"");
        Refused(Job(Port, "\"comparisons\": [{\"port\": \"own\", \"with\": \"own\", \"byHand\": [{\"station\": 1, \"rightMm\": 101}]}],"), "job-field-unusable", "from -100 to 100");
        Refused(Job(Port, "\"comparisons\": [{\"port\": \"own\", \"with\": \"own\", \"byHand\": [{\"station\": 1}, {\"station\": 1}]}],"), "job-field-unusable", "each station once");
        Refused(Job(Port, "\"date\": \"26.11.26\","), "job-field-unusable", "date");
        Refused(Job(Port, "\"printRatio\": [1, 2],"), "job-field-unusable", "printRatio");
        Refused(Whole.Replace("\"boreMm\": 68", "\"boreMm\": 6.8", StringComparison.Ordinal), "engine-data-out-of-range", "bore");
        Refused(Whole.Replace("\"diameterMm\": 33", "\"diameterMm\": 80", StringComparison.Ordinal), "engine-part-too-large", "valve of 80 mm");
        Refused(Whole.Replace("\"volumeCm3\": 80", "\"volumeCm3\": -1", StringComparison.Ordinal), "job-field-unusable", "burette");
    }

    [Theory]
    [InlineData("\"clearanceMm\": 0.4", "clearanceMm", "all three or none")]
    [InlineData("\"portFace\": [\"f.jpg\"], \"clearanceMm\": 0.4, \"portStuds\": [[0, 0], [9, 0]], \"manifoldStuds\": [[0, 0]]", "manifoldStuds", "as many places")]
    [InlineData("\"portFace\": [\"f.jpg\"], \"clearanceMm\": 0.4, \"portStuds\": [[0, 0, 1]], \"manifoldStuds\": [[0, 0]]", "portStuds", "places [x, y]")]
    [InlineData("\"portFace\": [\"f.jpg\"], \"clearanceMm\": -1, \"portStuds\": [[0, 0]], \"manifoldStuds\": [[0, 0]]", "clearanceMm", "from 0 to 50")]
    [InlineData("\"clearanceMm\": 0.4, \"portStuds\": [[0, 0]], \"manifoldStuds\": [[0, 0]]", "portFace", "places on the face")]
    [InlineData("\"pivot\": {\"port\": [0, 0], \"manifold\": [0, 0]}", "portFace", "places on the face")]
    [InlineData("\"portFace\": [\"f.jpg\"], \"pivot\": {\"port\": [0], \"manifold\": [0, 0]}", "pivot", "on each part")]
    [InlineData("\"portFace\": [\"f.jpg\"], \"pivot\": {\"port\": [0, 0], \"manifold\": [0, 0]}, \"clearanceMm\": 0.4, \"portStuds\": [[0, 0]], \"manifoldStuds\": [[0, 0]]", "pivot", "either turns")]
    [InlineData("\"gasketStuds\": [[0, 0]]", "gasketStuds", "beside a")]
    [InlineData("\"portFace\": [\"f.jpg\"], \"opening\": 2", "opening", "left out")]
    [InlineData("\"portFace\": [\"f.jpg\"], \"station\": 1", "station", "left out")]
    [InlineData("\"shiftMm\": -0.1", "shiftMm", "from 0 to 50")]
    [InlineData("\"turnDeg\": 200", "turnDeg", "from 0 to 180")]
    [InlineData("\"gasket\": [\"/etc/g.csv\"]", "", "/etc/g.csv")]
    public void A_joint_that_cannot_be_is_told_in_one_sentence(string fields, string field, string words)
    {
        JobDocumentFormat.Read(Job(Port, $"\"joints\": [{{\"port\": \"own\", \"manifold\": [\"m.jpg\"], {fields}}}],"), "a.job.json").TryGet(out _, out var problem);

        Assert.Contains(words, problem!.What, StringComparison.Ordinal);
        Assert.Contains(field, problem.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"portFace\": [\"f.jpg\"], \"portSeen\": \"front\", \"clearanceMm\": 0.4, \"portStuds\": [[0, 0], [9, 0]], \"manifoldStuds\": [[0, 0], [9, 0]], \"gasket\": [\"g.dxf\"], \"shiftMm\": 1, \"turnDeg\": 2")]
    [InlineData("\"portFace\": [\"f.jpg\"], \"pivot\": {\"port\": [0, 0], \"manifold\": [0, 0]}, \"manifoldSeen\": \"withFlow\"")]
    public void The_freedom_of_a_joint_is_read_and_written_again_alike(string fields)
    {
        var job = JobDocumentFormat.Read(Job(Port, $"\"joints\": [{{\"port\": \"own\", \"manifold\": [\"m.jpg\"], {fields}}}],"), "a.job.json").ValueOrThrow();

        Assert.Equal(JobDocumentFormat.Write(job), JobDocumentFormat.Write(JobDocumentFormat.Read(JobDocumentFormat.Write(job), "a.job.json").ValueOrThrow()));
        Assert.Contains("f.jpg", job.Files());
    }

    private static string Job(string ports, string more = "") =>
        $"{{\"schema\": \"sectionscan/job/1\", \"head\": \"Bramble 480 twin\", \"name\": \"own\", {more} \"ports\": [{ports}]}}";

    private static void Refused(string text, string code, string words)
    {
        JobDocumentFormat.Read(text, "a.job.json").TryGet(out _, out var problem);

        Assert.Equal(code, problem?.Code);
        Assert.Contains(words, problem!.What, StringComparison.Ordinal);
        Assert.StartsWith("a.job.json", problem.Where, StringComparison.Ordinal);
    }
}
