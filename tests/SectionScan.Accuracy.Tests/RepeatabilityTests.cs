using SectionScan.Jobs.Digitising;
using SectionScan.Testing.Accuracy;
using SectionScan.Testing.Truth;

namespace SectionScan.Accuracy.Tests;

public sealed class RepeatabilityTests
{
    [Theory]
    [InlineData("p01")]
    [InlineData("p07")]
    [InlineData("p08")]
    public void The_same_photo_gives_the_same_files_byte_for_byte(string name)
    {
        using var first = new RunFolder();
        using var second = new RunFolder();

        var names = Digitise(name, first.FullPath);
        Assert.Equal(names, Digitise(name, second.FullPath));

        Assert.Contains(names, n => n.EndsWith(".section.json", StringComparison.Ordinal));
        Assert.All(names, n => Assert.Equal(
            File.ReadAllBytes(Path.Combine(first.FullPath, n)), File.ReadAllBytes(Path.Combine(second.FullPath, n))));
    }

    private static string[] Digitise(string name, string folder)
    {
        var settings = PhotoJudge.Told(SamplePhotos.TruthOf(name)) with { Lens = SamplePhotoSet.Profile };
        var order = new DigitiseOrder(
            [SamplePhotos.PhotoPath(name)], settings, new Dictionary<string, string> { ["lens"] = "profile" }, "sectionscan test", folder, false);
        var outcome = Assert.Single(DigitisePhotos.Run(order).ValueOrThrow());
        Assert.Null(outcome.Problem);
        return [.. Directory.EnumerateFiles(folder).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];
    }

    private sealed class RunFolder : IDisposable
    {
        public string FullPath { get; } = Directory.CreateTempSubdirectory("sectionscan-run-").FullName;

        public void Dispose() => Directory.Delete(FullPath, recursive: true);
    }
}
