using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Files;

namespace SectionScan.Cli.Output;

/// <summary>Writes a command's answer as the one JSON document on standard output.</summary>
/// <remarks>UTF-8 without byte order mark; else as <see cref="JsonText"/> says.</remarks>
public sealed class JsonOutput(Terminal terminal)
{
    private bool isWritten;

    /// <summary>Writes the document. Nothing is written when it cannot be serialised.</summary>
    /// <param name="document">The whole answer, with its schema named inside.</param>
    /// <exception cref="InvalidOperationException">A document was already written in this run.</exception>
    public void Write<T>(T document)
        where T : notnull
    {
        if (isWritten)
        {
            throw new InvalidOperationException("One run writes one JSON document; a second one would make the output unreadable.");
        }

        // Whole before the first byte goes out: a half-written document is worse than none.
        var text = JsonText.Of(document);
        isWritten = true;
        terminal.Answers.Profile.Out.Writer.Write(text);
        terminal.Answers.Profile.Out.Writer.Flush();
    }
}
