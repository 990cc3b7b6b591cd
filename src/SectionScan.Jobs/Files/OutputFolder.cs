using System.Text;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Files;

/// <summary>A folder that results are written to. Each file appears whole or not at all: it is written beside its name and then
/// moved there.</summary>
public sealed class OutputFolder
{
    private OutputFolder(string path) => FullPath = path;

    /// <summary>The folder's full path.</summary>
    public string FullPath { get; }

    /// <summary>Opens a folder, making it when it is not there.</summary>
    public static Result<OutputFolder> Open(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        try
        {
            return new OutputFolder(Directory.CreateDirectory(path).FullName);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return FileProblems.CannotWrite(path, e.Message);
        }
    }

    /// <summary>Writes a file whole; one of the same name is replaced.</summary>
    /// <param name="name">The file's name, no folders.</param>
    /// <param name="content">What it holds.</param>
    /// <returns>The full path.</returns>
    public Result<string> Write(string name, byte[] content) => Write(name, stream => stream.Write(content));

    /// <summary>Writes text as UTF-8 without byte order mark; see <see cref="Write(string, byte[])"/>.</summary>
    public Result<string> Write(string name, string text) => Write(name, Text(text));

    /// <summary>Writes text as <see cref="Write(string, string)"/> does, but takes no other file's place: one with the same contents is left as it is.</summary>
    public Result<string> WriteUnlessTaken(string name, string text)
    {
        var path = Path.Combine(FullPath, name);
        return !Path.Exists(path) ? Write(name, text)
            : TextFile.Read(path, long.MaxValue).TryGet(out var there, out _) && there == text ? path
            : FileProblems.NotReplaced(path);
    }

    /// <summary>What writes a text as UTF-8 without byte order mark, for <see cref="WriteAll"/>.</summary>
    public static Action<Stream> Text(string text) => stream => stream.Write(Encoding.UTF8.GetBytes(text));

    /// <summary>Writes through a stream; see <see cref="Write(string, byte[])"/>.</summary>
    public Result<string> Write(string name, Action<Stream> write) => WriteAll([(name, write)]).Then<string>(paths => paths[0]);

    /// <summary>Writes files that belong together: none takes its name before all are written.</summary>
    /// <param name="files">Each file's name, no folders, and what writes it.</param>
    /// <returns>The full paths, in the same order; or what went wrong, and then no file has been made or changed unless the disk
    /// refuses the last step, the renaming.</returns>
    public Result<IReadOnlyList<string>> WriteAll(IReadOnlyList<(string Name, Action<Stream> Write)> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        if (files.FirstOrDefault(file => Path.GetFileName(file.Name) != file.Name || file.Name.Length == 0) is { Name: not null } odd)
        {
            throw new ArgumentException($"A file name without folders is wanted, not {odd.Name}.", nameof(files));
        }

        var paths = files.Select(file => Path.Combine(FullPath, file.Name)).ToList();
        var at = 0;
        try
        {
            for (; at < files.Count; at++)
            {
                using var stream = new FileStream(Unfinished(paths[at]), FileMode.Create, FileAccess.ReadWrite);
                files[at].Write(stream);
            }

            for (at = 0; at < files.Count; at++)
            {
                File.Move(Unfinished(paths[at]), paths[at], overwrite: true);
            }

            return paths;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            paths.ForEach(path => Discard(Unfinished(path)));
            return FileProblems.CannotWrite(paths[at], e.Message);
        }
    }

    /// <summary>Writes one file whole, wherever its path points; the folder is made when it is not there.</summary>
    public static Result<string> WriteFile(string path, string text)
    {
        var full = Path.GetFullPath(path);
        return Open(Path.GetDirectoryName(full)!).Then(folder => folder.Write(Path.GetFileName(full), text));
    }

    private static string Unfinished(string path) => path + ".part";

    private static void Discard(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The first failure is the one to tell; what is left behind ends in .part and is overwritten next time.
            return;
        }
    }
}
