using SectionScan.Testing.Truth;

namespace SectionScan.Testing.Rendering;

/// <summary>A rendered photo: the file and what it shows.</summary>
/// <param name="Jpeg">The bytes of the file.</param>
/// <param name="Truth">What it shows.</param>
public sealed record RenderedPhoto(byte[] Jpeg, PhotoTruth Truth)
{
    /// <summary>Writes the file and gives its path.</summary>
    public string SaveTo(string folder, string name)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllBytes(path, Jpeg);
        return path;
    }
}
