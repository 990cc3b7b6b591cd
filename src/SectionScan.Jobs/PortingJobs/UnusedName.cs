using System.Globalization;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>Names for new files, numbered on from those that lie in a folder.</summary>
internal static class UnusedName
{
    /// <summary>The name after the highest number of its kind, whatever the ending: "photo-4" when there is "photo-3.jpg".</summary>
    /// <param name="folder">The folder; need not be there.</param>
    /// <param name="prefix">What stands before the number.</param>
    public static string Next(string folder, string prefix)
    {
        var highest = !Directory.Exists(folder) ? 0 : Directory.EnumerateFileSystemEntries(folder, prefix + "*")
            .Select(each => Number(Path.GetFileName(each)[prefix.Length..])).DefaultIfEmpty(0).Max();
        return string.Create(CultureInfo.InvariantCulture, $"{prefix}{highest + 1}");
    }

    private static int Number(string rest)
    {
        var digits = rest.AsSpan()[..^rest.AsSpan().TrimStart("0123456789").Length];
        return int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;
    }
}
