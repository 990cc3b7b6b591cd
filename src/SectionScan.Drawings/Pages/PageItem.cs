namespace SectionScan.Drawings.Pages;

/// <summary>One thing drawn on a page; later items lie over earlier ones.</summary>
public abstract record PageItem
{
    /// <summary>What the item is for, in a word ("outline", "dimension", "marker"): a group's class in SVG, a layer in DXF.</summary>
    public string Layer { get; init; } = "drawing";
}
