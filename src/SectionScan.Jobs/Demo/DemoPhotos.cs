using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Demo;

/// <summary>Finds the sample photographs.</summary>
public static class DemoPhotos
{
    private const string FolderName = "sample-images";

    /// <summary>The folder to use.</summary>
    /// <param name="named">The folder that the person named, or null.</param>
    /// <param name="startFolders">Else: <c>sample-images</c> in one of these, or above it.</param>
    /// <returns>The folder, all photographs of the demonstration in it; or what is missing.</returns>
    public static Result<string> Find(string? named, IEnumerable<string> startFolders)
    {
        ArgumentNullException.ThrowIfNull(startFolders);
        var starts = startFolders.ToList();
        var folder = named ?? starts.Select(Above).FirstOrDefault(found => found is not null);
        if (folder is null)
        {
            return DemoProblems.NoPhotos(starts.FirstOrDefault() ?? FolderName);
        }

        var missing = DemoScenario.LensPhotos.Concat(DemoScenario.Ports.SelectMany(port => port.Photos))
            .Where(photo => !File.Exists(Path.Combine(folder, photo))).ToList();
        return missing.Count > 0 ? DemoProblems.PhotosMissing(folder, missing) : folder;
    }

    private static string? Above(string start)
    {
        for (var folder = new DirectoryInfo(start); folder is not null; folder = folder.Parent)
        {
            var samples = Path.Combine(folder.FullName, FolderName);
            if (Directory.Exists(samples))
            {
                return samples;
            }
        }

        return null;
    }
}
