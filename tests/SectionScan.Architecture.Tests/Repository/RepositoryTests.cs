using System.Text.RegularExpressions;
using SectionScan.Architecture.Tests.Layers;

namespace SectionScan.Architecture.Tests.Repository;

public class RepositoryTests
{
    private const int MostLinesOfAFile = 400;
    private const int MostLinesOfAReadme = 15;

    private static readonly string[] TopLevel =
        ["README.md", "DEVELOPERS.md", "SectionScan.sln", "src", "tests", "sample-images", "calibration", "LICENSE"];

    private static readonly string[] Sources = [".cs", ".razor", ".css", ".js", ".sh", ".sql", ".csproj", ".props", ".targets"];

    // Not text to read: pictures, and data whose fields are named by their formats.
    private static readonly string[] Unread = [".jpg", ".png", ".pdf", ".svg", ".json", ".db"];

    // What the code is about is ports and photographs, never how anybody came to write it. In pieces, so as not to find itself.
    private static readonly Regex OutOfPlace = new(
        string.Join('|', "trans" + "cript", "seed" + " document", @"\bthe " + @"seed\b", "video" + " recording"), RegexOptions.IgnoreCase);

    public static TheoryData<string> Projects => [.. BuiltProject.AllNames];

    [Fact]
    public void The_top_level_holds_only_what_a_newcomer_expects_there()
    {
        var top = RepositoryFiles.All.Select(file => file.Split('/')[0]).Distinct().Where(name => !name.StartsWith('.'));

        Assert.Empty(top.Except(TopLevel));
    }

    [Fact]
    public void No_source_file_is_longer_than_400_lines()
    {
        var tooLong = RepositoryFiles.All
            .Where(file => file.StartsWith("src/", StringComparison.Ordinal) && Sources.Contains(Path.GetExtension(file)))
            .Select(file => (File: file, Lines: LinesOf(file)))
            .Where(file => file.Lines > MostLinesOfAFile);

        Assert.Empty(tooLong);
    }

    [Fact]
    public void Every_file_speaks_of_the_product_only()
    {
        var found = RepositoryFiles.All
            .Where(file => !Unread.Contains(Path.GetExtension(file)))
            .SelectMany(file => OutOfPlace.Matches(RepositoryFiles.ReadText(file)).Select(match => $"{file}: {match.Value}"));

        Assert.Empty(found);
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Every_project_says_what_it_is_for_in_15_lines(string name)
    {
        var readme = $"src/{name}/README.md";

        Assert.Contains(readme, RepositoryFiles.All);
        Assert.InRange(LinesOf(readme), 5, MostLinesOfAReadme);
        Assert.All(
            ["Its one job", "May depend on", "Start reading"],
            part => Assert.Contains(part, RepositoryFiles.ReadText(readme), StringComparison.Ordinal));
    }

    private static int LinesOf(string file) => RepositoryFiles.ReadText(file).TrimEnd('\n').Split('\n').Length;
}
