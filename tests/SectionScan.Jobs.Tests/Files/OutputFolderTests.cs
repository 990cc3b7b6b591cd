using SectionScan.Jobs.Files;

namespace SectionScan.Jobs.Tests.Files;

public sealed class OutputFolderTests : IDisposable
{
    private readonly ResultFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_file_is_written_whole_and_nothing_else_is_left()
    {
        var path = OutputFolder.Open(folder.Root).Then(open => open.Write("area.csv", "1,2\n")).ValueOrThrow();

        Assert.Equal(folder.PathOf("area.csv"), path);
        Assert.Equal("1,2\n"u8.ToArray(), File.ReadAllBytes(path));
        Assert.Equal(["area.csv"], folder.Written);
    }

    [Fact]
    public void When_one_of_several_files_fails_the_old_ones_stay_as_they_were()
    {
        folder.Text("first.csv", "old");
        var open = OutputFolder.Open(folder.Root).ValueOrThrow();

        var written = open.WriteAll(
        [
            ("first.csv", stream => stream.Write("new"u8)),
            ("second.csv", _ => throw new IOException("the disk is full")),
        ]);

        Assert.False(written.TryGet(out _, out var problem));
        Assert.Equal("cannot-write", problem.Code);
        Assert.Equal(folder.PathOf("second.csv"), problem.Where);
        Assert.Contains("the disk is full", problem.What, StringComparison.Ordinal);
        Assert.Equal("old", File.ReadAllText(folder.PathOf("first.csv")));
        Assert.Equal(["first.csv"], folder.Written);
    }

    [Fact]
    public void A_folder_below_a_file_is_refused_with_a_remedy()
    {
        var file = folder.Text("file", "words");

        Assert.False(OutputFolder.Open(Path.Combine(file, "below")).TryGet(out _, out var problem));
        Assert.Equal("cannot-write", problem.Code);
        Assert.Contains("--out", problem.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../above.csv")]
    [InlineData("below/it.csv")]
    [InlineData("")]
    public void A_name_with_folders_in_it_is_an_error_of_the_caller(string name)
    {
        var open = OutputFolder.Open(folder.Root).ValueOrThrow();

        Assert.Throws<ArgumentException>(() => open.Write(name, "words"));
        Assert.Empty(folder.Written);
    }
}
