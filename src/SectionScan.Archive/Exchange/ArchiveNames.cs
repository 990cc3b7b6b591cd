using System.Text.RegularExpressions;

namespace SectionScan.Archive.Exchange;

/// <summary>The names that files in an archive may have, and no others: none of them leads out of a folder.</summary>
internal static partial class ArchiveNames
{
    public const string Manifest = "manifest.json";
    public const string ReadMe = "README.txt";

    public static string OfDocument(string sha256) => $"documents/{sha256}.json";

    public static string OfPhoto(ArchivedPhoto photo) => $"photos/{photo.Sha256}{Path.GetExtension(photo.Name).ToLowerInvariant()}";

    public static bool IsAllowed(string name) => name is Manifest or ReadMe || Document().IsMatch(name) || Photo().IsMatch(name);

    [GeneratedRegex(@"\Aphotos/[0-9a-f]{64}\.[a-z0-9]{1,5}\z", RegexOptions.CultureInvariant)]
    private static partial Regex Photo();

    [GeneratedRegex(@"\Adocuments/[0-9a-f]{64}\.json\z", RegexOptions.CultureInvariant)]
    private static partial Regex Document();
}
