using System.Text;
using Spectre.Console;

namespace SectionScan.Cli.Terminals;

/// <summary>The two streams of a run: answers on standard output, messages on standard error.</summary>
/// <remarks>Colours, wrapping and progress appear only where a person watches. <c>NO_COLOR</c> is honoured as
/// https://no-color.org asks: set and not empty means no colour. Everywhere else lines are plain, whole, and end in \n.</remarks>
public sealed class Terminal
{
    private const int NarrowestScreen = 20;
    private const int FallbackWidth = 80;

    // Text that a program reads must not be folded to the width of a screen that is not there.
    private const int UnfoldedWidth = 10_000;

    private Terminal(IAnsiConsole answers, IAnsiConsole messages, IAnsiConsole help)
    {
        Answers = answers;
        Messages = messages;
        Help = help;
    }

    /// <summary>Standard output as help is written to it: folded for reading wherever it goes.</summary>
    public IAnsiConsole Help { get; }

    /// <summary>Standard output: tables, help, or the one JSON document.</summary>
    public IAnsiConsole Answers { get; }

    /// <summary>Standard error: problems, warnings, progress.</summary>
    public IAnsiConsole Messages { get; }

    /// <summary>True when a person watches standard error, so that progress is worth showing.</summary>
    public bool AreMessagesWatched => Messages.Profile.Out.IsTerminal;

    /// <summary>Writes a table to standard output. A word that is wider than its column goes on in the next line: none is cut short.</summary>
    public void WriteTable(Table table)
    {
        ArgumentNullException.ThrowIfNull(table);
        foreach (var cell in table.Columns.Select(column => column.Header).Concat(table.Rows.SelectMany(row => row)).OfType<IOverflowable>())
        {
            cell.Overflow = Overflow.Fold;
        }

        Answers.Write(table);
    }

    /// <summary>The streams of this process, in UTF-8 without byte order mark.</summary>
    public static Terminal ForProcess()
    {
        if (OperatingSystem.IsWindows() && !(Console.IsOutputRedirected && Console.IsErrorRedirected))
        {
            Console.OutputEncoding = Encoding.UTF8;
        }

        var colours = string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
            ? ColorSystemSupport.Detect
            : ColorSystemSupport.NoColors;
        var answers = Open(Console.OpenStandardOutput(), Console.IsOutputRedirected, colours);
        return new(
            answers,
            Open(Console.OpenStandardError(), Console.IsErrorRedirected, colours),
            Console.IsOutputRedirected ? Unwatched(answers.Profile.Out.Writer, FallbackWidth) : answers);
    }

    /// <summary>Streams that nobody watches: plain text without colour, progress or wrapping.</summary>
    /// <param name="answers">Takes the place of standard output.</param>
    /// <param name="messages">Takes the place of standard error.</param>
    public static Terminal ForWriters(TextWriter answers, TextWriter messages) =>
        new(Unwatched(answers, UnfoldedWidth), Unwatched(messages, UnfoldedWidth), Unwatched(answers, FallbackWidth));

    /// <summary>Streams that behave as a person's screen does.</summary>
    /// <param name="answers">Takes the place of standard output.</param>
    /// <param name="messages">Takes the place of standard error.</param>
    /// <param name="width">Columns of the screen; at least 20.</param>
    /// <param name="hasColours">False as with <c>NO_COLOR</c>.</param>
    public static Terminal ForScreen(TextWriter answers, TextWriter messages, int width, bool hasColours)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, NarrowestScreen);
        var colours = hasColours ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors;
        var watched = Watched(answers, width, AnsiSupport.Yes, colours);
        return new(watched, Watched(messages, width, AnsiSupport.Yes, colours), watched);
    }

    private static IAnsiConsole Open(Stream stream, bool isRedirected, ColorSystemSupport colours) => isRedirected
        ? Unwatched(OpenUtf8(stream), UnfoldedWidth)
        : Watched(OpenUtf8(stream), ScreenWidth(), AnsiSupport.Detect, colours);

    // AutoFlush: a message must be out before a crash or a long computation. The streams live as long as the process.
    private static StreamWriter OpenUtf8(Stream stream) =>
        new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true };

    private static int ScreenWidth()
    {
        try
        {
            return Console.WindowWidth >= NarrowestScreen ? Console.WindowWidth : FallbackWidth;
        }
        catch (IOException)
        {
            // No screen at all, which is usual under a scheduler.
            return FallbackWidth;
        }
    }

    private static IAnsiConsole Unwatched(TextWriter writer, int width) =>
        Create(writer, false, width, AnsiSupport.No, ColorSystemSupport.NoColors);

    private static IAnsiConsole Watched(TextWriter writer, int width, AnsiSupport ansi, ColorSystemSupport colours) =>
        Create(writer, true, width, ansi, colours);

    private static IAnsiConsole Create(TextWriter writer, bool isWatched, int width, AnsiSupport ansi, ColorSystemSupport colours)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.NewLine = "\n";
        return AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new TerminalOutput(writer, isWatched, width),
            Ansi = ansi,
            ColorSystem = colours,
            Interactive = isWatched ? InteractionSupport.Yes : InteractionSupport.No,
            // The library would switch colours on under some build servers, whose logs then hold escape codes.
            Enrichment = new ProfileEnrichment { UseDefaultEnrichers = false },
        });
    }
}
