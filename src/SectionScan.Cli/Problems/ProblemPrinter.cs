using SectionScan.Cli.Terminals;
using SectionScan.Metrology.Results;
using Spectre.Console;

namespace SectionScan.Cli.Problems;

/// <summary>Tells a person what went wrong, where, and what to do about it; always on standard error.</summary>
/// <remarks>Three lines with their labels in a column, like the title block of a drawing. A script finds a whole part on one line;
/// on a screen long parts are wrapped under their own beginning.</remarks>
public sealed class ProblemPrinter(Terminal terminal)
{
    private const int LabelWidth = 7;
    private const string TraceVariable = "SECTIONSCAN_TRACE";

    private static readonly Style PlainStyle = Style.Plain;
    private static readonly Style ErrorStyle = new(Color.Red, decoration: Decoration.Bold);
    private static readonly Style WarningStyle = new(Color.Yellow, decoration: Decoration.Bold);
    private static readonly Style LabelStyle = new(decoration: Decoration.Dim);
    private static readonly Style RemedyStyle = new(Color.Green);

    // Columns for the text beside its label; a program that reads along gets every part on one line.
    private int Room => terminal.AreMessagesWatched ? Math.Max(terminal.Messages.Profile.Width - LabelWidth - 3, 10) : int.MaxValue;

    /// <summary>Prints a problem that kept something from being done.</summary>
    public void Print(Problem problem) => Print("problem", ErrorStyle, problem);

    /// <summary>Prints something that was done, but that the person should know of.</summary>
    public void PrintWarning(Problem problem) => Print("warning", WarningStyle, problem);

    internal void Print(UsageProblem usage)
    {
        Write("problem", ErrorStyle, usage.Problem.What, ErrorStyle);
        Write("where", LabelStyle, usage.Problem.Where, PlainStyle);
        if (usage.Marker is not null)
        {
            // Under a command line that had to be wrapped the carets would point at nothing; their comment still helps.
            var marker = usage.Problem.Where.Length <= Room ? usage.Marker : usage.Marker.TrimStart(' ', '^');
            WriteLine(new string(' ', LabelWidth + 2) + marker, WarningStyle);
        }

        Write("remedy", RemedyStyle, usage.Problem.Remedy, PlainStyle);
    }

    internal void PrintStopped() => Write("stopped", WarningStyle, "Stopped before the end. What was finished is kept.", PlainStyle);

    // The one place where a defect of the program becomes text. The trace helps nobody but a developer, so it has to be asked for.
    internal void PrintDefect(Exception exception)
    {
        Write("defect", ErrorStyle, $"SectionScan itself failed: {FirstLine(exception.Message)} ({exception.GetType().Name})", ErrorStyle);
        Write("where", LabelStyle, $"{SectionScanApp.Name} {SectionScanApp.Version}", PlainStyle);
        Write("remedy", RemedyStyle, $"Run the same command with {TraceVariable}=1 in the environment and report what it prints.", PlainStyle);
        if (Environment.GetEnvironmentVariable(TraceVariable) == "1")
        {
            terminal.Messages.Profile.Out.Writer.WriteLine(exception.ToString());
        }
    }

    private void Print(string label, Style style, Problem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        Write(label, style, problem.What, label == "problem" ? ErrorStyle : PlainStyle);
        Write("where", LabelStyle, problem.Where, PlainStyle);
        Write("remedy", RemedyStyle, problem.Remedy, PlainStyle);
    }

    private void Write(string label, Style labelStyle, string text, Style textStyle)
    {
        // A file name may hold anything, control codes included; on a screen these must not act.
        var safe = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        var shown = label.PadLeft(LabelWidth);
        foreach (var line in Wrap(safe, Room))
        {
            terminal.Messages.Write(new Text(shown + "  ", labelStyle));
            WriteLine(line, textStyle);
            shown = new string(' ', LabelWidth);
        }
    }

    private void WriteLine(string line, Style style)
    {
        if (terminal.AreMessagesWatched)
        {
            terminal.Messages.WriteLine(line, style);
        }
        else
        {
            // Past the library, which folds at its width: nobody watches, so nothing is folded.
            terminal.Messages.Profile.Out.Writer.WriteLine(line);
        }
    }

    private static IEnumerable<string> Wrap(string text, int room)
    {
        var line = string.Empty;
        foreach (var word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > room)
            {
                yield return line;
                line = word;
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }

        yield return line;
    }

    private static string FirstLine(string text) => text.Split('\n', 2)[0].TrimEnd();
}
