namespace SectionScan.Testing.Truth;

/// <summary>Finds the sample photographs.</summary>
public static class SamplePhotos
{
    /// <summary>The environment variable that names another folder of the same layout.</summary>
    public const string FolderVariable = "SECTIONSCAN_PHOTOS";

    /// <summary>The folder <c>sample-images</c> above the running test, else the one named by <see cref="FolderVariable"/>.</summary>
    /// <exception cref="DirectoryNotFoundException">There is neither.</exception>
    public static string Folder { get; } = FindFolder();

    /// <summary>The path of a photo, such as <c>p01</c>.</summary>
    public static string PhotoPath(string name) => Path.Combine(Folder, name + ".jpg");

    /// <summary>The path of a photo's truth file.</summary>
    public static string TruthPath(string name) => Path.Combine(Folder, "truth", name + ".json");

    /// <summary>What a photo shows.</summary>
    public static PhotoTruth TruthOf(string name) => PhotoTruth.Read(TruthPath(name));

    private static string FindFolder()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            var samples = Path.Combine(at.FullName, "sample-images");
            if (Directory.Exists(Path.Combine(samples, "truth")))
            {
                return samples;
            }
        }

        return Environment.GetEnvironmentVariable(FolderVariable) is { Length: > 0 } named && Directory.Exists(named)
            ? named
            : throw new DirectoryNotFoundException($"No folder sample-images above {AppContext.BaseDirectory}, and {FolderVariable} names none.");
    }
}
