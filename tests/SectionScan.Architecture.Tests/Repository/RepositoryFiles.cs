using System.Diagnostics;
using SectionScan.Testing.Repository;

namespace SectionScan.Architecture.Tests.Repository;

/// <summary>The files that belong to the repository: tracked, or new and not ignored.</summary>
internal static class RepositoryFiles
{
    private static readonly string[] Built = ["bin", "obj", ".git", "TestResults", "BenchmarkDotNet.Artifacts", "sectionscan-demo"];

    /// <summary>Paths below the top, with forward slashes.</summary>
    public static IReadOnlyList<string> All { get; } =
        [.. (FromGit() ?? FromDisk()).Where(file => File.Exists(RepositoryFolder.PathOf(file))).Order(StringComparer.Ordinal)];

    public static string ReadText(string file) => File.ReadAllText(RepositoryFolder.PathOf(file));

    private static List<string>? FromGit()
    {
        // The clone may belong to somebody else than the one who runs the tests; nothing in it is executed.
        var start = new ProcessStartInfo(
            "git", ["-c", "safe.directory=*", "-C", RepositoryFolder.Root, "ls-files", "-z", "--cached", "--others", "--exclude-standard"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        try
        {
            using var git = Process.Start(start)!;
            var errors = git.StandardError.ReadToEndAsync();
            var listed = git.StandardOutput.ReadToEnd();
            git.WaitForExit();
            _ = errors.Result;
            return git.ExitCode == 0 ? [.. listed.Split('\0', StringSplitOptions.RemoveEmptyEntries)] : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // No git: the sources came as an archive.
            return null;
        }
    }

    private static IEnumerable<string> FromDisk() =>
        Directory.EnumerateFiles(RepositoryFolder.Root, "*", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(RepositoryFolder.Root, file).Replace('\\', '/'))
            .Where(file => !file.Split('/').Intersect(Built).Any());
}
