namespace SectionScan.Drawings.Pages;

/// <summary>One thing drawn on a page; later items lie over earlier ones.</summary>
public abstract record PageItem
{
    /// <summary>What the item is for, in a word ("outline", "dimension", "marker"): a group's class in SVG, a layer in DXF.</summary>
    public string Layer { get; init; } = "drawing";

    /// <summary>The same item within a larger page.</summary>
    /// <param name="origin">Where the item's page begins on the larger one.</param>
    /// <param name="scale">How much larger it is drawn there, pens and lettering too.</param>
    public abstract PageItem Placed(PagePoint origin, double scale);
}
