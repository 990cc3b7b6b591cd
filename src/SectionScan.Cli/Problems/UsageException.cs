namespace SectionScan.Cli.Problems;

// Carries a wrong command line out of the parser's hooks, which can only throw.
internal sealed class UsageException(UsageProblem usage) : Exception(usage.Problem.ToString())
{
    public UsageProblem Usage { get; } = usage;
}
