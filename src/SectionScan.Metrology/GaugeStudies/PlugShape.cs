namespace SectionScan.Metrology.GaugeStudies;

/// <summary>The outline of a plug of known size.</summary>
public enum PlugShape
{
    /// <summary>A plug gauge or a turned disc; its width is the diameter.</summary>
    Circle,

    /// <summary>Two half circles joined by straight sides; width over all, height between the sides.</summary>
    Stadium,

    /// <summary>A square; its width is the side.</summary>
    Square,

    /// <summary>The outline of a gauge block; width and height.</summary>
    Rectangle,
}
