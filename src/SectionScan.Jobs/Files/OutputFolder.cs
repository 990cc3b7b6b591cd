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
    public Result<string> Write(string name, string text) => Write(name, Encoding.UTF8.GetBytes(text));

    /// <summary>Writes through a stream; see <see cref="Write(string, byte[])"/>.</summary>
    public Result<string> Write(string name, Action<Stream> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        if (Path.GetFileName(name) != name || name.Length == 0)
        {
            throw new ArgumentException($"A file name without folders is wanted, not {name}.", nameof(name));
        }

        var path = Path.Combine(FullPath, name);
        var unfinished = path + ".part";
        try
        {
            using (var stream = new FileStream(unfinished, FileMode.Create, FileAccess.ReadWrite))
            {
                write(stream);
            }

            File.Move(unfinished, path, overwrite: true);
            return path;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Discard(unfinished);
            return FileProblems.CannotWrite(path, e.Message);
        }
    }

    /// <summary>Writes one file whole, wherever its path points; the folder is made when it is not there.</summary>
    public static Result<string> WriteFile(string path, string text)
    {
        var full = Path.GetFullPath(path);
        return Open(Path.GetDirectoryName(full)!).Then(folder => folder.Write(Path.GetFileName(full), text));
    }

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
