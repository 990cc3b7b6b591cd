using System.Security.Cryptography;
using System.Text;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Files;

/// <summary>Reads a text file, never more of it than a bound.</summary>
public static class TextFile
{
    /// <summary>Reads a UTF-8 text file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="mostBytes">A longer file is refused before it is read.</param>
    public static Result<string> Read(string path, long mostBytes)
    {
        try
        {
            var info = new FileInfo(path);
            return Directory.Exists(path) ? FileProblems.CannotRead(path, "it is a folder")
                : !info.Exists ? FileProblems.CannotRead(path, "there is no such file")
                : info.Length > mostBytes ? FileProblems.CannotRead(path, $"it is longer than {mostBytes / 1_000_000} MB")
                : File.ReadAllText(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return FileProblems.CannotRead(path, e.Message);
        }
    }

    /// <summary>The SHA-256 of a text's UTF-8 bytes, lower-case hexadecimal.</summary>
    public static string Sha256Of(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    /// <summary>The SHA-256 of a file's bytes, lower-case hexadecimal.</summary>
    public static Result<string> Sha256(string path)
    {
        try
        {
            using var file = File.OpenRead(path);
            return Convert.ToHexStringLower(SHA256.HashData(file));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return FileProblems.CannotRead(path, e.Message);
        }
    }
}
