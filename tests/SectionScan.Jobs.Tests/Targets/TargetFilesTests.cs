using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Targets;
using SectionScan.Jobs.Targets;
using SectionScan.Testing.Repository;

namespace SectionScan.Jobs.Tests.Targets;

public sealed class TargetFilesTests : IDisposable
{
    private readonly ResultFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(TargetKind.Sheet, "sheet-a4")]
    [InlineData(TargetKind.Card, "card-a4")]
    public void The_committed_copies_in_calibration_are_what_is_written_today(TargetKind kind, string name)
    {
        TargetFiles.Write(kind, PaperSize.A4, folder.Root).ValueOrThrow();

        Assert.Equal([name + ".pdf", name + ".svg"], folder.Written);
        Assert.Equal(File.ReadAllText(RepositoryFolder.PathOf("calibration", name + ".svg")), File.ReadAllText(folder.PathOf(name + ".svg")));
        Assert.Equal("%PDF-"u8.ToArray(), File.ReadAllBytes(folder.PathOf(name + ".pdf"))[..5]);
    }
}
