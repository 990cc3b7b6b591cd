namespace SectionScan.Jobs.Tests;

/// <summary>A folder of its own for one test; gone with it.</summary>
internal sealed class ResultFolder : IDisposable
{
    public string Root { get; } = Directory.CreateTempSubdirectory("sectionscan-").FullName;

    public IReadOnlyList<string> Written =>
        [.. Directory.GetFileSystemEntries(Root).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];

    public string PathOf(string name) => Path.Combine(Root, name);

    public string Text(string name, string text)
    {
        File.WriteAllText(PathOf(name), text);
        return PathOf(name);
    }

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
