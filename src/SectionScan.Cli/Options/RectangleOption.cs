using System.ComponentModel;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Cli.Options;

/// <summary>The corners of a rectangle in a photo.</summary>
/// <param name="Corners">Top left, top right, bottom right, bottom left, px as displayed.</param>
/// <param name="Text">As it was given.</param>
[TypeConverter(typeof(RectangleOptionConverter))]
public sealed record RectangleOption(IReadOnlyList<PixelPoint> Corners, string Text)
{
    /// <summary>Reads <c>X,Y,X,Y,X,Y,X,Y</c>.</summary>
    public static Result<RectangleOption> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return NumberList.Read(text, ',', 8) is { } n
            ? new RectangleOption([.. Enumerable.Range(0, 4).Select(i => new PixelPoint(n[2 * i], n[(2 * i) + 1]))], text)
            : OptionProblems.RectangleNotEightNumbers(text);
    }
}
