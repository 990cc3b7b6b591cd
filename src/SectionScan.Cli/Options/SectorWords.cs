using SectionScan.Metrology.Comparison;

namespace SectionScan.Cli.Options;

/// <summary>Sectors of a port as options name them.</summary>
internal static class SectorWords
{
    private static readonly Dictionary<string, OutlineRegion[]> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["floor"] = [OutlineRegion.Floor],
        ["roof"] = [OutlineRegion.Roof],
        ["left"] = [OutlineRegion.Left],
        ["right"] = [OutlineRegion.Right],
        ["sides"] = [OutlineRegion.Left, OutlineRegion.Right],
        ["roof-left-corner"] = [OutlineRegion.RoofLeftCorner],
        ["roof-right-corner"] = [OutlineRegion.RoofRightCorner],
        ["floor-left-corner"] = [OutlineRegion.FloorLeftCorner],
        ["floor-right-corner"] = [OutlineRegion.FloorRightCorner],
        ["roof-corners"] = [OutlineRegion.RoofLeftCorner, OutlineRegion.RoofRightCorner],
        ["floor-corners"] = [OutlineRegion.FloorLeftCorner, OutlineRegion.FloorRightCorner],
        ["corners"] = [OutlineRegion.RoofLeftCorner, OutlineRegion.RoofRightCorner, OutlineRegion.FloorLeftCorner, OutlineRegion.FloorRightCorner],
    };

    /// <summary>The words there are.</summary>
    public static IEnumerable<string> Known => Words.Keys;

    /// <summary>The sectors of a word, or null.</summary>
    public static IReadOnlyList<OutlineRegion>? Read(string word) => Words.GetValueOrDefault(word.Trim());
}
