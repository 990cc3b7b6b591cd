namespace SectionScan.Testing.Repository;

/// <summary>Finds files of the repository from a test that runs in its build folder.</summary>
public static class RepositoryFolder
{
    /// <summary>The top of the repository: the nearest folder above the tests that holds SectionScan.sln.</summary>
    public static string Root { get; } = Find();

    /// <summary>The full path of something in the repository, whether it exists or not.</summary>
    /// <param name="parts">Folder and file names from the top down.</param>
    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "SectionScan.sln")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException($"No folder above {AppContext.BaseDirectory} holds SectionScan.sln.");
    }
}
