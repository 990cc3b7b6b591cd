using System.Text;

namespace SectionScan.Archive.Library;

/// <summary>From what a person types to an FTS5 pattern: every word in quotes, so that nothing in it is an operator, and with a star,
/// so that its beginning is enough.</summary>
internal static class WordPattern
{
    private const int MostWords = 32;

    /// <summary>The pattern, or null when there is no letter and no digit to look for.</summary>
    public static string? From(string words)
    {
        var pattern = new StringBuilder();
        var parts = words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
            .Select(part => string.Concat(part.Where(c => c is not ('"' or '\0'))))
            .Where(part => part.Any(char.IsLetterOrDigit))
            .Take(MostWords);
        foreach (var part in parts)
        {
            pattern.Append(pattern.Length == 0 ? "\"" : " AND \"").Append(part).Append("\"*");
        }

        return pattern.Length == 0 ? null : pattern.ToString();
    }
}
