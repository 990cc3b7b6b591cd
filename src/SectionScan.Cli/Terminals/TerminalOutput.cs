using System.Text;
using Spectre.Console;

namespace SectionScan.Cli.Terminals;

// The library's own class takes for a terminal only Console.Out itself, which on Linux may carry another encoding.
internal sealed class TerminalOutput(TextWriter writer, bool isTerminal, int width) : IAnsiConsoleOutput
{
    private const int UsualHeight = 24;

    public TextWriter Writer { get; } = writer;

    public bool IsTerminal { get; } = isTerminal;

    public int Width { get; } = width;

    public int Height => UsualHeight;

    public void SetEncoding(Encoding encoding)
    {
        // The writer's encoding was chosen when it was opened.
    }
}
