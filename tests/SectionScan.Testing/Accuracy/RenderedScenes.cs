using SectionScan.Imaging.Digitising;
using SectionScan.Testing.Rendering;

namespace SectionScan.Testing.Accuracy;

/// <summary>Renders scenes to files and judges what they give; with a folder to keep them in, a photo is rendered only once.</summary>
public sealed class RenderedScenes(string? keptIn = null) : IDisposable
{
    private readonly DirectoryInfo folder = keptIn is null
        ? Directory.CreateTempSubdirectory("sectionscan-scenes-")
        : Directory.CreateDirectory(keptIn);

    /// <summary>The photo's path.</summary>
    public string PathOf(PhotoScene scene)
    {
        ArgumentNullException.ThrowIfNull(scene);
        var path = Path.Combine(folder.FullName, FormattableString.Invariant($"{scene.Name.Replace(' ', '-')}-{scene.WidthPx}.jpg"));
        if (!File.Exists(path))
        {
            File.WriteAllBytes(path + ".part", PhotoRenderer.Render(scene).Jpeg);
            File.Move(path + ".part", path);
        }

        return path;
    }

    /// <summary>Digitises the scene with all that a careful person knows, with the true lens's profile or without one.</summary>
    public PhotoVerdict Judge(PhotoScene scene, bool hasProfile, bool wantsPicture = false)
    {
        var truth = PhotoRenderer.TruthOf(scene);
        return Judge(scene, PhotoJudge.Told(truth) with { Lens = hasProfile ? SceneLens.ProfileOf(scene) : null, WantsPicture = wantsPicture });
    }

    /// <summary>Digitises the scene with given settings.</summary>
    public PhotoVerdict Judge(PhotoScene scene, DigitiseSettings settings) =>
        PhotoJudge.Judge(PathOf(scene), PhotoRenderer.TruthOf(scene), settings);

    /// <inheritdoc />
    public void Dispose()
    {
        if (keptIn is null)
        {
            folder.Delete(recursive: true);
        }
    }
}
