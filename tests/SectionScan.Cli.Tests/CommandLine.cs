using SectionScan.Cli.Terminals;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Tests;

/// <summary>Runs the program in this process as a script would, and keeps what it said.</summary>
internal sealed record CommandLine(int ExitCode, string Output, string Error)
{
    public static Task<CommandLine> RunAsync(params string[] arguments) =>
        CaptureAsync(terminal => SectionScanApp.RunAsync(arguments, terminal, CancellationToken.None));

    /// <summary>The same as a person sees it on a screen of so many columns.</summary>
    public static async Task<string> OnScreenAsync(int columns, params string[] arguments)
    {
        using var answers = new StringWriter();
        using var messages = new StringWriter();
        await SectionScanApp.RunAsync(arguments, Terminal.ForScreen(answers, messages, columns, hasColours: false));
        return answers.ToString();
    }

    /// <summary>The letters of a text in no order: folding a table's cells changes none of them.</summary>
    public static string Letters(string text) => new([.. text.Where(c => !char.IsWhiteSpace(c) && c is not '─').Order()]);

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
