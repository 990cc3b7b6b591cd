namespace SectionScan.Metrology.Comparison;

/// <summary>The sides of a port in the trade's words.</summary>
public static class RegionWords
{
    /// <summary>"floor", "roof, left corner" and so on.</summary>
    public static string Of(OutlineRegion region) => region switch
    {
        OutlineRegion.Right => "right wall",
        OutlineRegion.RoofRightCorner => "roof right corner",
        OutlineRegion.Roof => "roof",
        OutlineRegion.RoofLeftCorner => "roof left corner",
        OutlineRegion.Left => "left wall",
        OutlineRegion.FloorLeftCorner => "floor left corner",
        OutlineRegion.Floor => "floor",
        _ => "floor right corner",
    };
}
