namespace SectionScan.Cli;

/// <summary>The numbers that <c>sectionscan</c> ends with. Scripts rely on them: a meaning, once given, stays.</summary>
public static class ExitCode
{
    /// <summary>Everything asked for was done.</summary>
    public const int Done = 0;

    /// <summary>The command line was wrong: an unknown command or option, a missing or impossible value.</summary>
    public const int WrongUsage = 2;

    /// <summary>An input could not be used, and nothing was made of it.</summary>
    public const int UnusableInput = 3;

    /// <summary>Some of several inputs could not be used; the others were, and what was made of them is kept.</summary>
    public const int SomeInputsUnusable = 4;

    /// <summary>A defect of the program itself. The number is EX_SOFTWARE of the BSD <c>sysexits.h</c>.</summary>
    public const int InternalError = 70;

    /// <summary>Stopped by the person (Ctrl-C): 128 + SIGINT, as a POSIX shell reports it.</summary>
    public const int Stopped = 130;

    /// <summary>The exit code of a command that took several inputs.</summary>
    /// <param name="usable">How many inputs were used; at least 0.</param>
    /// <param name="unusable">How many could not be used; at least 0.</param>
    /// <returns><see cref="Done"/>, <see cref="SomeInputsUnusable"/>, or <see cref="UnusableInput"/> when none could be used.</returns>
    public static int OfBatch(int usable, int unusable)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(usable);
        ArgumentOutOfRangeException.ThrowIfNegative(unusable);
        return (usable, unusable) switch
        {
            (_, 0) => Done,
            (0, _) => UnusableInput,
            _ => SomeInputsUnusable,
        };
    }
}
