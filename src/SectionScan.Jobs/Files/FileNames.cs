namespace SectionScan.Jobs.Files;

/// <summary>File names made of words that people wrote.</summary>
public static class FileNames
{
    private const int Longest = 80;
    private static readonly string[] PhotoEndings = [".jpg", ".jpeg", ".png", ".heic", ".heif", ".avif", ".webp", ".tif", ".tiff", ".bmp", ".dng"];

    /// <summary>True when the name is that of a photo.</summary>
    public static bool IsPhoto(string path) => PhotoEndings.Contains(Path.GetExtension(path), StringComparer.OrdinalIgnoreCase);

    /// <summary>The words with everything that a file system could trip over turned into a dash.</summary>
    public static string Safe(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var name = new string([.. words.Take(Longest).Select(c => char.IsLetterOrDigit(c) || c is '.' or '_' ? c : '-')]).Trim('.', '-');
        return name.Length == 0 ? "section" : name;
    }

    /// <summary>Names that none of the others has: the first keeps its own, later ones are numbered, past names that are there already.</summary>
    public static IReadOnlyList<string> Unique(IEnumerable<string> stems)
    {
        ArgumentNullException.ThrowIfNull(stems);
        string[] wanted = [.. stems];
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var kept = Array.ConvertAll(wanted, taken.Add);
        return [.. wanted.Select((stem, i) => kept[i]
            ? stem
            : Enumerable.Range(2, wanted.Length).Select(n => FormattableString.Invariant($"{stem}-{n}")).First(taken.Add))];
    }

    /// <summary>A section's name from its file's: without folder, <c>.section.json</c> or other ending.</summary>
    public static string StemOf(string path)
    {
        const string Document = ".section.json";
        var name = Path.GetFileName(path);
        return name.EndsWith(Document, StringComparison.OrdinalIgnoreCase) ? name[..^Document.Length] : Path.GetFileNameWithoutExtension(path);
    }
}
