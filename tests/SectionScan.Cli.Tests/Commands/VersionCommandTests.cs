using System.Text.Json;

namespace SectionScan.Cli.Tests.Commands;

public class VersionCommandTests
{
    [Fact]
    public async Task Json_is_one_document_alone_on_standard_output()
    {
        var run = await CommandLine.RunAsync("version", "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Empty(run.Error);
        using var document = JsonDocument.Parse(run.Output);
        Assert.Equal("sectionscan/version/1", document.RootElement.GetProperty("schema").GetString());
        Assert.Equal(SectionScanApp.Version, document.RootElement.GetProperty("version").GetString());
    }

    [Fact]
    public async Task Text_names_the_program_and_what_it_runs_on()
    {
        var run = await CommandLine.RunAsync("version");

        Assert.StartsWith($"sectionscan {SectionScanApp.Version}\n.NET ", run.Output, StringComparison.Ordinal);
    }
}
