using System.Text;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;
using SectionScan.Testing.Sections;

namespace SectionScan.Cli.Tests.Commands.Port;

public sealed class PortCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Sections_and_a_table_make_a_port_with_a_volume()
    {
        var made = await Make("station,distance_mm\n1,0\n2,50\n", Section(1), Section(2));
        var schedule = await CommandLine.RunAsync("schedule", folder.PathOf("a.port.json"), "--burette", "40");

        Assert.Equal((ExitCode.Done, ExitCode.Done), (made.ExitCode, schedule.ExitCode));
        Assert.Contains("2 stations over 50 mm", made.Output, StringComparison.Ordinal);

        // An ellipse of 40 × 28 mm is 879.646 mm² (field guide 3.3); over 50 mm 43.98 cm³. The burette's 40 do not fit.
        Assert.Contains("Volume 43.98", schedule.Output, StringComparison.Ordinal);
        Assert.Contains("stations or scale must be wrong", schedule.Output.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public async Task In_inches_schedule_and_gas_speed_tell_nothing_in_millimetres_and_documents_stay_so()
    {
        await Make("station,distance_mm\n1,0\n2,50\n", Section(1), Section(2));
        var port = folder.PathOf("a.port.json");

        var schedule = await CommandLine.RunAsync("schedule", port, "--burette", "40", "--units", "in");
        var speed = await CommandLine.RunAsync("gas-speed", port, "--bore", "68", "--stroke", "66", "--rpm-to", "7000", "--torque-rpm", "7000", "--units", "in");
        var inMm = await CommandLine.RunAsync("gas-speed", port, "--bore", "68", "--stroke", "66", "--rpm-to", "7000", "--torque-rpm", "7000", "--json");
        var inInch = await CommandLine.RunAsync("gas-speed", port, "--bore", "68", "--stroke", "66", "--rpm-to", "7000", "--torque-rpm", "7000", "--json", "--units", "in");

        // 43.98 cm³ = 2.684 in³; 879.646 mm² at 7000 1/min give 79.897·700/879.646 = 63.58 m/s = 208.6 ft/s (field guide 6).
        Assert.Contains("2.684", schedule.Output, StringComparison.Ordinal);
        Assert.Contains("208.6", speed.Output, StringComparison.Ordinal);
        Assert.Contains("197 to 246 ft/s", speed.Output.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.All(new[] { schedule.Output, speed.Output }, text => Assert.DoesNotMatch(@"\bmm|cm³|m/s", text));
        Assert.Equal(inMm.Output, inInch.Output);
    }

    // Seven columns, one headed by a word of nine letters: on a screen so narrow it stands in two lines and is not cut short.
    [Theory]
    [InlineData(80)]
    [InlineData(50)]
    public async Task A_schedule_on_a_narrow_screen_loses_no_letter(int columns)
    {
        await Make("station,distance_mm\n1,0\n2,50\n", Section(1), Section(2));
        string[] command = ["schedule", folder.PathOf("a.port.json"), "--burette", "40"];

        Assert.Equal(CommandLine.Letters((await CommandLine.RunAsync(command)).Output), CommandLine.Letters(await CommandLine.OnScreenAsync(columns, command)));
    }

    [Theory]
    [InlineData("station,distance_mm\n1,0\n2,50\n3,70\n", "names station 3, but no section")]
    [InlineData("station,distance_mm\n1,50\n2,0\n", "not beyond station 1")]
    [InlineData("station,distance_mm\n1,0\n1,50\n", "Station 1 stands twice")]
    public async Task A_table_that_does_not_fit_is_refused_and_nothing_is_written(string table, string words)
    {
        var run = await Make(table, Section(1), Section(2));

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
        Assert.Contains("remedy", run.Error, StringComparison.Ordinal);
        Assert.Contains("stations.csv", run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.PathOf("a.port.json")));
    }

    [Fact]
    public async Task One_section_or_a_mixture_is_refused()
    {
        var one = await Make("station,distance_mm\n1,0\n2,50\n", Section(1));
        var mixed = await Make("station,distance_mm\n1,0\n2,50\n", Section(1), Section(2, SectionSubject.Opening));

        Assert.Contains("Only station 1 is there", one.Error, StringComparison.Ordinal);
        Assert.Contains("slices of a mould (station 1) and openings in metal (station 2)", mixed.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Gas_speed_without_its_engine_is_wrong_usage_and_its_formulas_need_none()
    {
        var usage = await CommandLine.RunAsync("gas-speed", "a.port.json");
        var formulas = await CommandLine.RunAsync("gas-speed", "--formulas");

        Assert.Equal(ExitCode.WrongUsage, usage.ExitCode);
        Assert.Contains("--bore, --stroke, --rpm-to", usage.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Done, formulas.ExitCode);
        Assert.Contains("by hand 0.54431802 , here 0.54431802", formulas.Output, StringComparison.Ordinal);
    }

    private Task<CommandLine> Make(string table, params string[] sections)
    {
        var stations = folder.Bytes("stations.csv", Encoding.UTF8.GetBytes(table));
        return CommandLine.RunAsync(["port", .. sections, "--stations", stations, "--out", folder.PathOf("a.port.json")]);
    }

    private string Section(int station, SectionSubject subject = SectionSubject.Mould)
    {
        var document = SectionDocumentFormat.Read(SampleSections.Document(SampleSections.Ellipse(40, 28, 720), station), "sample").ValueOrThrow();
        var changed = document with { Section = document.Section with { Subject = subject } };
        return folder.Bytes(FormattableString.Invariant($"{station}.section.json"), Encoding.UTF8.GetBytes(SectionDocumentFormat.Write(changed)));
    }
}
