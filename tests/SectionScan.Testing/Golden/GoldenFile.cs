using SectionScan.Testing.Repository;

namespace SectionScan.Testing.Golden;

/// <summary>Compares text with an expectation that is kept in a file beside the tests and reviewed like code.</summary>
/// <remarks>With UPDATE_EXPECTATIONS=1 in the environment the file is written anew, and the test fails all the same, so that
/// nobody takes a rewritten expectation for a passed test: look at the difference, then run again without it.</remarks>
public static class GoldenFile
{
    private const string UpdateVariable = "UPDATE_EXPECTATIONS";

    /// <summary>Throws unless <paramref name="actual"/> equals the file, blanks at line ends aside.</summary>
    /// <param name="project">The test project, e.g. <c>SectionScan.Cli.Tests</c>; the file lies in its folder Expectations.</param>
    /// <param name="name">The file's name, e.g. <c>help.txt</c>.</param>
    /// <param name="actual">What the program gave.</param>
    /// <exception cref="GoldenFileException">The two differ, or there is no such file.</exception>
    public static void Matches(string project, string name, string actual)
    {
        var path = RepositoryFolder.PathOf("tests", project, "Expectations", name);
        var given = Normalise(actual);
        if (Environment.GetEnvironmentVariable(UpdateVariable) == "1")
        {
            File.WriteAllText(path, given);
            throw new GoldenFileException($"{name} was written anew; read the difference, then run without {UpdateVariable}.");
        }

        var expected = File.Exists(path) ? Normalise(File.ReadAllText(path)) : throw new GoldenFileException($"{path} does not exist.");
        if (expected != given)
        {
            throw new GoldenFileException($"{name} differs.\n--- expected\n{expected}\n--- given\n{given}");
        }
    }

    private static string Normalise(string text) =>
        string.Join('\n', text.ReplaceLineEndings("\n").Split('\n').Select(line => line.TrimEnd())).TrimEnd('\n') + "\n";
}
