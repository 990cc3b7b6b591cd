using System.Diagnostics;
using System.Globalization;
using SectionScan.Archive.Library;

namespace SectionScan.Archive.Tests.Storage;

/// <summary>Real processes, really killed; a real disk, really full.</summary>
public sealed class DurabilityTests : IDisposable
{
    private const string SmallDisk = "SECTIONSCAN_SMALL_DISK";

    private readonly LibraryFolder folder = new();

    [Fact]
    public void A_kill_at_any_moment_loses_nothing_that_was_confirmed()
    {
        const int Kills = 8;
        var random = new Random(480);
        var confirmed = new List<long>();
        for (var round = 0; round < Kills; round++)
        {
            using var writer = StartWriter($"Kill {round}", 5000);
            var wanted = random.Next(1, 25);
            while (wanted-- > 0 && writer.StandardOutput.ReadLine() is { } line)
            {
                confirmed.Add(long.Parse(line, CultureInfo.InvariantCulture));
            }

            Thread.Sleep(random.Next(0, 12));
            writer.Kill();
            writer.WaitForExit();
            while (writer.StandardOutput.ReadLine() is { } line)
            {
                // The last line may be cut off by the kill; a whole number below a cut one would be in the library as well.
                confirmed.Add(long.Parse(line, CultureInfo.InvariantCulture));
            }

            Assert.NotEqual(0, writer.ExitCode);
            using var library = folder.Open();
            Assert.True(library.CheckIntegrity().ValueOrThrow().IsSound);
        }

        using var survivor = folder.Open();
        var kept = survivor.List().ValueOrThrow().Select(each => each.Id).ToHashSet();
        Assert.True(confirmed.Count >= Kills);
        Assert.All(confirmed, id => Assert.Contains(id, kept));
        Assert.InRange(kept.Count - confirmed.Count, 0, Kills); // at most one was on the disk but not yet told
        Assert.All(kept, id => Assert.True(survivor.Show(id).ValueOrThrow().ReadDocument().IsSuccess));
    }

    [Fact]
    public void Three_processes_write_one_new_library_at_once_and_none_is_refused()
    {
        const int Each = 40;
        using var first = StartWriter("First", Each);
        using var second = StartWriter("Second", Each);
        using var third = StartWriter("Third", Each);

        foreach (var writer in new[] { first, second, third })
        {
            var ids = writer.StandardOutput.ReadToEnd();
            var error = writer.StandardError.ReadToEnd();
            writer.WaitForExit();
            Assert.Equal((0, ""), (writer.ExitCode, error));
            Assert.Equal(Each, ids.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        }

        using var library = folder.Open();
        Assert.Equal(3 * Each, library.List().ValueOrThrow().Count);
        Assert.True(library.CheckIntegrity().ValueOrThrow().IsSound);
    }

    [Fact]
    public async Task Threads_of_one_program_may_share_a_library()
    {
        using var library = folder.Open();

        await Task.WhenAll(Enumerable.Range(0, 4).Select(thread => Task.Run(() =>
        {
            for (var i = 0; i < 15; i++)
            {
                library.Add(LibraryFolder.Content(i, LibraryFolder.Place(i, $"Head {thread}"))).ValueOrThrow();
                library.FindSimilar(Testing.Sections.SampleSections.Blob(i), 3, new()).ValueOrThrow();
            }
        })));

        Assert.Equal(60, library.List().ValueOrThrow().Count);
    }

    [Fact]
    public void Two_people_who_correct_the_same_revision_do_not_overwrite_each_other()
    {
        using var one = folder.Open();
        using var two = folder.Open();
        var id = one.Add(LibraryFolder.Content(1)).ValueOrThrow().Id;

        one.Revise(id, LibraryFolder.Content(1) with { Notes = "one" }, "Mine.", basedOn: 1).ValueOrThrow();
        var refused = Results.ProblemOf(two.Revise(id, LibraryFolder.Content(1) with { Notes = "two" }, "Mine.", basedOn: 1));

        Assert.Equal("entry-changed-meanwhile", refused.Code);
        Assert.Equal("one", two.Show(id).ValueOrThrow().Current.Content.Notes);
    }

    // The limit on a file's size (setrlimit, RLIMIT_FSIZE) makes the kernel refuse a write in the middle of a change, as a full disk does,
    // without touching the system.
    [SkippableFact]
    public void A_disk_that_takes_no_more_is_told_and_loses_nothing_that_was_confirmed()
    {
        Skip.IfNot(OperatingSystem.IsLinux(), "The limit on a file's size is set by a POSIX shell.");
        using var writer = Process.Start(new ProcessStartInfo(
            "/bin/sh",
            ["-c", "trap '' XFSZ; ulimit -f 1600; exec dotnet exec \"$0\" \"$@\"", WriterProgram, folder.LibraryPath, "Full", "5000"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,

            // The runtime's own double mapping makes a file far beyond the limit.
            Environment = { ["DOTNET_EnableWriteXorExecute"] = "0" },
        })!;
        var confirmed = writer.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => long.Parse(line, CultureInfo.InvariantCulture)).ToList();
        var told = writer.StandardError.ReadToEnd();
        writer.WaitForExit();

        Assert.Equal(3, writer.ExitCode);
        Assert.Contains("Check that the disk is connected and has room", told, StringComparison.Ordinal);
        Assert.NotEmpty(confirmed);
        using var library = folder.Open();
        Assert.True(library.CheckIntegrity().ValueOrThrow().IsSound);
        Assert.Equal(confirmed, library.List().ValueOrThrow().Select(each => each.Id).Order());
        library.Add(LibraryFolder.Content(1)).ValueOrThrow();
    }

    [SkippableFact]
    public void A_full_disk_is_told_and_leaves_the_library_as_it_was()
    {
        var disk = folder.FilePath("disk");
        Directory.CreateDirectory(disk);
        Skip.IfNot(Environment.GetEnvironmentVariable(SmallDisk) == "1", $"A small disk is made by mounting a tmpfs, which only {SmallDisk}=1 allows.");
        Skip.IfNot(Run("mount", "-t", "tmpfs", "-o", "size=1500k", "tmpfs", disk) == 0, "Mounting a small tmpfs needs the rights of root.");
        try
        {
            var path = Path.Combine(disk, "library.db");
            var confirmed = new List<long>();
            string? code = null;
            using (var library = SectionLibrary.Open(path, folder.Clock).ValueOrThrow())
            {
                for (var i = 0; i < 900 && code is null; i++)
                {
                    if (library.Add(LibraryFolder.Content(i)).TryGet(out var added, out var problem))
                    {
                        confirmed.Add(added.Id);
                    }

                    code = problem?.Code;
                }

                Assert.Equal("library-disk-full", code);
                Assert.NotEmpty(confirmed);
                Assert.Equal(confirmed, library.List().ValueOrThrow().Select(each => each.Id).Order());
                Assert.Equal("library-disk-full", Results.ProblemOf(library.Backup(Path.Combine(disk, "copy.db"))).Code);
                Assert.Equal([], Directory.GetFiles(disk, "*.part"));
            }

            Assert.Equal(0, Run("mount", "-o", "remount,size=20m", disk));
            using var roomy = SectionLibrary.Open(path, folder.Clock).ValueOrThrow();
            Assert.True(roomy.CheckIntegrity().ValueOrThrow().IsSound);
            Assert.Equal(confirmed, roomy.List().ValueOrThrow().Select(each => each.Id).Order());
            roomy.Add(LibraryFolder.Content(950)).ValueOrThrow();
        }
        finally
        {
            Run("umount", disk);
        }
    }

    [SkippableFact]
    public void A_disk_too_small_for_a_new_library_leaves_a_clear_problem()
    {
        var disk = folder.FilePath("disk");
        Directory.CreateDirectory(disk);
        Skip.IfNot(Environment.GetEnvironmentVariable(SmallDisk) == "1", $"A small disk is made by mounting a tmpfs, which only {SmallDisk}=1 allows.");
        Skip.IfNot(Run("mount", "-t", "tmpfs", "-o", "size=40k", "tmpfs", disk) == 0, "Mounting a small tmpfs needs the rights of root.");
        try
        {
            Assert.Equal("library-disk-full", folder.ProblemOfOpening(Path.Combine(disk, "library.db")).Code);
            Assert.Equal(0, Run("mount", "-o", "remount,size=20m", disk));
            SectionLibrary.Open(Path.Combine(disk, "library.db"), folder.Clock).ValueOrThrow().Dispose();
        }
        finally
        {
            Run("umount", disk);
        }
    }

    public void Dispose() => folder.Dispose();

    private static string WriterProgram => Path.Combine(AppContext.BaseDirectory, "SectionScan.Archive.Writer.dll");

    private Process StartWriter(string head, int count)
    {
        return Process.Start(new ProcessStartInfo("dotnet", ["exec", WriterProgram, folder.LibraryPath, head, count.ToString(CultureInfo.InvariantCulture)])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
    }

    private static int Run(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true })!;
            process.WaitForExit();
            return process.ExitCode;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return -1;
        }
    }
}
