namespace SectionScan.Drawings.Templates;

/// <summary>What the lines of a template are for: groups in SVG, layers in DXF.</summary>
public static class TemplateLayers
{
    /// <summary>The edge of a plug.</summary>
    public const string Plug = "cut-plug";

    /// <summary>The opening of a plate.</summary>
    public const string CutOut = "cut-out";

    /// <summary>The outside of a plate with its handle.</summary>
    public const string Plate = "cut-plate";

    /// <summary>A plug's handle.</summary>
    public const string Handle = "cut-handle";

    /// <summary>A slot for a plug's handle, a hole for its stem, or one to hang a plate by.</summary>
    public const string Hole = "cut-hole";

    /// <summary>Centre lines, to be scribed, not cut.</summary>
    public const string Centre = "centre";

    /// <summary>Lettering.</summary>
    public const string Mark = "mark";

    /// <summary>True for a line that is cut.</summary>
    public static bool IsCut(string layer)
    {
        ArgumentNullException.ThrowIfNull(layer);
        return layer.StartsWith("cut-", StringComparison.Ordinal);
    }
}
