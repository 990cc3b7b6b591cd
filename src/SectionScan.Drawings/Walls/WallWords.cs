using System.Globalization;
using SectionScan.Porting.Walls;

namespace SectionScan.Drawings.Walls;

/// <summary>A wall's chance in words.</summary>
internal static class WallWords
{
    /// <summary>"4.1 %", "below 0.1 %", "62.0 %  CAUTION".</summary>
    public static string Chance(RemainingWall wall)
    {
        var percent = 100 * wall.ChanceUnderLimit;
        var words = percent < 0.1 ? "below 0.1 %" : percent > 99.9 ? "above 99.9 %" : string.Create(CultureInfo.InvariantCulture, $"{percent:0.0} %");
        return wall.NeedsCaution ? words + "  CAUTION" : words;
    }
}
