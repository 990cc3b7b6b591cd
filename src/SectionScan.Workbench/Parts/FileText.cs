using Microsoft.AspNetCore.Components.Forms;

namespace SectionScan.Workbench.Parts;

/// <summary>Reads a small text file that a person chose.</summary>
internal static class FileText
{
    /// <summary>The text; null when it is longer than it may be.</summary>
    public static async Task<string?> ReadAsync(IBrowserFile file, long mostBytes)
    {
        if (file.Size > mostBytes)
        {
            return null;
        }

        using var content = file.OpenReadStream(mostBytes);
        using var reader = new StreamReader(content);
        return await reader.ReadToEndAsync().ConfigureAwait(true);
    }
}
