using System.Runtime.InteropServices;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Terminals;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands;

internal sealed class VersionCommand(Terminal terminal, JsonOutput json) : Command<OutputSettings>
{
    public override int Execute(CommandContext context, OutputSettings settings, CancellationToken cancellationToken)
    {
        var runtime = RuntimeInformation.FrameworkDescription;
        var system = $"{RuntimeInformation.OSDescription} ({RuntimeInformation.ProcessArchitecture})";
        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/version/1", SectionScanApp.Version, Runtime = runtime, System = system });
        }
        else
        {
            terminal.Answers.WriteLine($"{SectionScanApp.Name} {SectionScanApp.Version}");
            terminal.Answers.WriteLine($"{runtime} on {system}");
        }

        return ExitCode.Done;
    }
}
