using System.Diagnostics;
using SectionScan.Testing.Repository;

namespace SectionScan.Cli.Tests;

/// <summary>Does what a newcomer does: types what the README shows, in its order, where the sample photos lie.</summary>
public sealed class ReadmeTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Every_command_that_the_README_shows_works_in_the_order_shown()
    {
        var blocks = Blocks(await File.ReadAllLinesAsync(Path.Combine(RepositoryFolder.Root, "README.md"))).ToList();
        folder.Bytes("stations.csv", Table(blocks, "station,distance_mm"));
        folder.Bytes("walls.csv", Table(blocks, "kind,station,name"));
        Directory.CreateSymbolicLink(folder.PathOf("sample-images"), Path.Combine(RepositoryFolder.Root, "sample-images"));
        var commands = blocks.SelectMany(block => block).Where(line => line.StartsWith("sectionscan ", StringComparison.Ordinal)).ToList();

        // A shell, for the patterns of files and the quotes are the shell's.
        var script = $"sectionscan() {{ dotnet '{Path.Combine(AppContext.BaseDirectory, "sectionscan.dll")}' \"$@\" > last.txt 2>&1; }}\n"
            + string.Join('\n', commands.Select(command => $"{command} || {{ echo '{command.Replace("'", "'\\''", StringComparison.Ordinal)}'; cat last.txt; exit 1; }}"));
        using var shell = Process.Start(new ProcessStartInfo("bash", ["-c", script]) { WorkingDirectory = folder.PathOf("."), RedirectStandardOutput = true })!;
        var said = await shell.StandardOutput.ReadToEndAsync();
        await shell.WaitForExitAsync();

        Assert.True(commands.Count > 25, $"{commands.Count} commands");
        Assert.True(shell.ExitCode == 0, said);
    }

    /// <summary>The blocks between fences; those with a word after the fence are for people with photos of their own.</summary>
    private static IEnumerable<List<string>> Blocks(IEnumerable<string> lines)
    {
        List<string>? block = null;
        var isForAll = false;
        foreach (var line in lines)
        {
            if (!line.StartsWith("```", StringComparison.Ordinal))
            {
                block?.Add(line);
            }
            else if (block is null)
            {
                (block, isForAll) = ([], line.Length == 3);
            }
            else
            {
                if (isForAll)
                {
                    yield return block;
                }

                block = null;
            }
        }
    }

    private static byte[] Table(List<List<string>> blocks, string head) =>
        System.Text.Encoding.UTF8.GetBytes(string.Join('\n', blocks.Single(block => block[0].StartsWith(head, StringComparison.Ordinal))) + "\n");
}
