namespace SectionScan.Cli.Tests;

/// <summary>A test that looks at what was written to the two streams of a terminal.</summary>
public abstract class TerminalTest : IDisposable
{
    protected StringWriter Answers { get; } = new();

    protected StringWriter Messages { get; } = new();

    public void Dispose()
    {
        Answers.Dispose();
        Messages.Dispose();
        GC.SuppressFinalize(this);
    }
}
