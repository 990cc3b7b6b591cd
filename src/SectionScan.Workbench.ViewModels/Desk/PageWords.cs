using System.Text.RegularExpressions;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>What the layers below say to users of the command line, in the words of the workbench's fields and places. A document that the
/// command line wrote keeps its own words; only what is shown changes.</summary>
public static partial class PageWords
{
    private static readonly (string Said, string Shown)[] Phrases =
    [
        ("measure the check bars with a calliper and give --print-ratio X,Y;", "measure the check bars with a calliper and enter them at Prepare;"),
        ("Measure the check bars again and give --print-ratio,", "Measure the check bars again and enter them at Prepare,"),
        ("Give --thickness MM.", "Enter the thickness at Capture, then digitise again."),
        ("Make a lens profile (sectionscan lens) and give it with --lens,", "Learn the lens at Prepare,"),
        ("Use the profile of this camera at this picture size, or leave --lens out.", "Learn the lens of this camera at this picture size at Prepare, or use none."),
        ("Give --subject to match, or leave it out.", "Photograph it that way."),
        ("Choose another folder with --out, or make room and check permissions.", "Make room on the disk and check the folder's permissions."),
        ("Give the library's file with --library, or add a section first: that makes one.", "Keep a section at Archive first: that makes one."),
    ];

    /// <summary>The words for the page, lengths in the unit of the window.</summary>
    /// <param name="said">A sentence, lengths in millimetres.</param>
    /// <param name="isInch">True for inches.</param>
    public static string Of(string? said, bool isInch) => InchWords.Of(Of(said), isInch);

    /// <summary>The words for the page.</summary>
    public static string Of(string? said)
    {
        var shown = said ?? string.Empty;
        foreach (var (from, to) in Phrases)
        {
            shown = shown.Replace(from, to, StringComparison.Ordinal);
        }

        return Option().Replace(shown, "$1");
    }

    /// <summary>An option of the command line that no phrase above names: its bare name remains.</summary>
    [GeneratedRegex("--([a-z]+(?:-[a-z]+)*)(?: (?:[A-Z][A-Z,.0-9]*)(?![a-z]))?")]
    private static partial Regex Option();
}
