using Spectre.Console.Cli;

namespace SectionScan.Cli.Problems;

// The parser puts options that it does not know aside, and whatever follows `--`. Here nothing may be left over: a mistyped
// `--thicknes 12` would otherwise measure with the default thickness.
internal sealed class LeftoverArguments(IReadOnlyList<string> arguments) : ICommandInterceptor
{
    private static readonly string[] OptionsOfProgram = ["-h", "--help", "-v", "--version"];

    public void Intercept(CommandContext context, CommandSettings settings)
    {
        if (Find(context.Remaining, arguments) is { } usage)
        {
            throw new UsageException(usage);
        }
    }

    public static UsageProblem? FindBeforeCommand(IReadOnlyList<string> arguments) =>
        arguments.Count > 0 && arguments[0].StartsWith('-') && !OptionsOfProgram.Contains(arguments[0], StringComparer.OrdinalIgnoreCase)
            ? UsageProblem.At(arguments, 0, $"'{arguments[0]}' stands where a command is expected.", "No command")
            : null;

    // Asked first when anything else is wrong: an unknown option may have swallowed the argument that is now missing.
    public static UsageProblem? Find(ITypeResolver? resolver, IReadOnlyList<string> arguments) =>
        resolver?.Resolve(typeof(IRemainingArguments)) is IRemainingArguments remaining ? Find(remaining, arguments) : null;

    private static UsageProblem? Find(IRemainingArguments remaining, IReadOnlyList<string> arguments)
    {
        for (var i = 0; i < arguments.Count; i++)
        {
            if (arguments[i] == "--")
            {
                return UsageProblem.At(
                    arguments, i, "Nothing can follow '--'.", "A file whose name begins with '-' can be given as ./-name");
            }

            var name = arguments[i].Split('=', ':')[0];
            if (name.StartsWith('-') && remaining.Parsed.Contains(name))
            {
                return UsageProblem.At(arguments, i, $"Unknown option '{name}'.", "No such option");
            }
        }

        return null;
    }
}
