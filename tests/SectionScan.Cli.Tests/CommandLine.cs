using SectionScan.Cli.Terminals;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Tests;

/// <summary>Runs the program in this process as a script would, and keeps what it said.</summary>
internal sealed record CommandLine(int ExitCode, string Output, string Error)
{
    public static Task<CommandLine> RunAsync(params string[] arguments) =>
        CaptureAsync(terminal => SectionScanApp.RunAsync(arguments, terminal, CancellationToken.None));

    public static Task<CommandLine> RunAsync(Action<IConfigurator> addCommands, params string[] arguments) =>
        RunAsync(addCommands, CancellationToken.None, arguments);

    public static Task<CommandLine> RunAsync(Action<IConfigurator> addCommands, CancellationToken stop, params string[] arguments) =>
        CaptureAsync(terminal => SectionScanApp.RunAsync(arguments, terminal, addCommands, stop));

    private static async Task<CommandLine> CaptureAsync(Func<Terminal, Task<int>> run)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var exitCode = await run(Terminal.ForWriters(output, error));
        return new(exitCode, output.ToString(), error.ToString());
    }
}
