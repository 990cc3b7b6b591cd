using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Results;

namespace SectionScan.Drawings.Outlines;

/// <summary>Reads an outline from a drawing: DXF or SVG, or a table of corners (CSV), told apart by the file's name.</summary>
public static class OutlineFile
{
    /// <summary>The longest text that is read.</summary>
    public const int MaximumBytes = 64_000_000;

    /// <summary>True when the name is that of a drawing or table that <see cref="Read"/> knows.</summary>
    public static bool IsKnown(string path) => Kind(path) is ".dxf" or ".svg" or ".csv";

    /// <summary>Reads.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="path">The file; its ending tells its kind.</param>
    /// <param name="choice">Which of the lines is the outline. Of no account for a table.</param>
    /// <returns>The outline in mm, y up; or why there is none.</returns>
    public static Result<ChosenOutline> Read(string text, string path, OutlineChoice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        switch (Kind(path))
        {
            case ".dxf":
                return DxfOutlines.Read(text, path, choice.MmPerUnit).Then(drawn => choice.Take(drawn, path));
            case ".svg":
                return SvgOutlines.Read(text, path, choice.MmPerUnit).Then(drawn => choice.Take(drawn, path));
            case ".csv":
                using (var reader = new StringReader(text))
                {
                    return OutlineCsv.Read(reader, path).Then<ChosenOutline>(outline => new ChosenOutline(outline, string.Empty, 0, 1));
                }

            default:
                return OutlineFileProblems.UnknownKind(path);
        }
    }

    private static string Kind(string path) => Path.GetExtension(path).ToLowerInvariant();
}
