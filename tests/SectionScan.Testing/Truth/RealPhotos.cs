namespace SectionScan.Testing.Truth;

/// <summary>Finds real photographs kept beside the repository, in <c>shared/real-photos</c>; they are not part of it.</summary>
public static class RealPhotos
{
    /// <summary>The environment variable that names the folder.</summary>
    public const string FolderVariable = "SECTIONSCAN_REAL_PHOTOS";

    /// <summary>The folder, or null where it is missing: then tests that need it are skipped.</summary>
    public static string? Folder { get; } = FindFolder();

    /// <summary>Why tests are skipped where there are none.</summary>
    public static string WhyMissing => $"No folder shared/real-photos above the test, and {FolderVariable} names none.";

    private static string? FindFolder()
    {
        if (Environment.GetEnvironmentVariable(FolderVariable) is { Length: > 0 } named)
        {
            return Directory.Exists(named) ? named : null;
        }

        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            var photos = Path.Combine(at.FullName, "shared", "real-photos");
            if (File.Exists(Path.Combine(photos, "coins.png")))
            {
                return photos;
            }
        }

        return null;
    }
}
