using SectionScan.Metrology.Results;

namespace SectionScan.Cli.Options;

// The only way in which a type converter can refuse a value; the top of the program unwraps it into its problem.
internal sealed class OptionException(Problem problem) : Exception(problem.ToString())
{
    public Problem Problem { get; } = problem;
}
