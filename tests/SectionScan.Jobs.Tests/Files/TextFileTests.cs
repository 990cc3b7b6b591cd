using SectionScan.Jobs.Files;

namespace SectionScan.Jobs.Tests.Files;

public sealed class TextFileTests : IDisposable
{
    private readonly ResultFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_file_up_to_the_bound_is_read() => Assert.Equal("12345", TextFile.Read(folder.Text("a", "12345"), 5).ValueOrThrow());

    [Fact]
    public void A_longer_file_a_folder_and_a_missing_file_are_refused_by_name()
    {
        string[] paths = [folder.Text("long", "123456"), folder.Root, folder.PathOf("missing")];
        foreach (var path in paths)
        {
            Assert.False(TextFile.Read(path, 5).TryGet(out _, out var problem));
            Assert.Equal("cannot-read", problem.Code);
            Assert.Equal(path, problem.Where);
        }
    }
}
