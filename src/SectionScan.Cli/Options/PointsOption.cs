using System.ComponentModel;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Cli.Options;

/// <summary>Two points in a photo and their distance.</summary>
/// <param name="First">One, px as displayed.</param>
/// <param name="Second">The other.</param>
/// <param name="DistanceMm">Their distance, mm.</param>
/// <param name="Text">As it was given.</param>
[TypeConverter(typeof(PointsOptionConverter))]
public sealed record PointsOption(PixelPoint First, PixelPoint Second, double DistanceMm, string Text)
{
    /// <summary>Reads <c>X,Y,X,Y,MM</c>.</summary>
    public static Result<PointsOption> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return NumberList.Read(text, ',', 5) is { } n && n[4] > 0
            ? new PointsOption(new(n[0], n[1]), new(n[2], n[3]), n[4], text)
            : OptionProblems.PointsNotFiveNumbers(text);
    }
}
