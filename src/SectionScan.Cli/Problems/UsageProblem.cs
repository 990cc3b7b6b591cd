using System.Text.RegularExpressions;
using SectionScan.Cli.Options;
using SectionScan.Metrology.Results;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Problems;

// A wrong command line in our own words, with the caret line that the parser draws under the word at fault.
internal sealed partial record UsageProblem(Problem Problem, string? Marker)
{
    // These two mean that a command is built wrongly, not called wrongly.
    private static readonly string[] DefectMessages = ["Could not resolve type", "Could not find converter"];

    public static bool IsUsage(CommandRuntimeException exception) =>
        !DefectMessages.Any(message => exception.Message.StartsWith(message, StringComparison.Ordinal));

    public static UsageProblem From(CommandRuntimeException exception, IReadOnlyList<string> arguments)
    {
        if (exception.InnerException is OptionException option)
        {
            return new(option.Problem, null);
        }

        var marker = MarkerOf(exception.Pretty);
        // The parser joins the words by blanks, as we do, so its caret stands under the same letter.
        var shift = new string(' ', SectionScanApp.Name.Length + 1);
        return new(
            new Problem("wrong-usage", Describe(exception.Message), CommandLineOf(arguments), RemedyFor(exception.Message, arguments)),
            marker is null ? null : shift + marker);
    }

    // The word at fault, by its place among the arguments.
    public static UsageProblem At(IReadOnlyList<string> arguments, int index, string what, string comment)
    {
        var before = string.Join(' ', [SectionScanApp.Name, .. arguments.Take(index)]).Length + 1;
        return new(
            new Problem("wrong-usage", what, CommandLineOf(arguments), RemedyFor(what, arguments)),
            $"{new string(' ', before)}{new string('^', arguments[index].Length)} {comment}");
    }

    private static string CommandLineOf(IReadOnlyList<string> arguments) => string.Join(' ', [SectionScanApp.Name, .. arguments]);

    private static string Describe(string message)
    {
        var missing = MissingValue().Match(message);
        if (missing.Success)
        {
            var name = missing.Groups["name"].Value;
            return $"Option '{(name.Length == 1 ? "-" : "--")}{name}' needs a value.";
        }

        var conversion = FailedConversion().Match(message);
        if (!conversion.Success)
        {
            return message;
        }

        var wanted = conversion.Groups["type"].Value switch
        {
            // An option that may be left out; those that hold words have converters of their own.
            "Double" or "Nullable" => "a number (with a point, not a comma)",
            "Int32" or "Int64" => "a whole number",
            _ => "one of the values that can stand here",
        };
        return $"'{conversion.Groups["value"].Value}' is not {wanted}.{conversion.Groups["rest"].Value}";
    }

    // "Error: ...", blank, the command line, the carets with their comment: only the last is wanted here.
    private static string? MarkerOf(Spectre.Console.Rendering.IRenderable? pretty)
    {
        if (pretty is null)
        {
            return null;
        }

        using var text = new StringWriter();
        var console = Terminals.Terminal.ForWriters(text, text).Messages;
        console.Write(pretty);
        var lines = text.ToString().Split('\n');
        var carets = Array.FindIndex(lines, line => line.TrimStart().StartsWith('^'));
        if (carets < 1)
        {
            return null;
        }

        var indent = lines[carets - 1].Length - lines[carets - 1].TrimStart().Length;
        return lines[carets][Math.Min(indent, lines[carets].Length)..].TrimEnd();
    }

    private static string RemedyFor(string message, IReadOnlyList<string> arguments)
    {
        var command = arguments.Count > 0 && CommandName().IsMatch(arguments[0]) && message != $"Unknown command '{arguments[0]}'."
            ? arguments[0]
            : null;
        return command is null
            ? $"Run '{SectionScanApp.Name} --help' to see the commands and how to call them."
            : $"Run '{SectionScanApp.Name} {command} --help' to see how it is called, or '{SectionScanApp.Name} --help' for all commands.";
    }

    [GeneratedRegex(@"^Failed to convert '(?<value>.*)' to (?<type>\w+)(`\d)?\.(?<rest>.*)$", RegexOptions.Singleline)]
    private static partial Regex FailedConversion();

    [GeneratedRegex(@"^Option '(?<name>.+)' is defined but no value has been provided\.$")]
    private static partial Regex MissingValue();

    [GeneratedRegex("^[a-z][a-z-]*$")]
    private static partial Regex CommandName();
}
