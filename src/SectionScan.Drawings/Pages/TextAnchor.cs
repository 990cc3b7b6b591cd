namespace SectionScan.Drawings.Pages;

/// <summary>Which part of a line of text stands at its position.</summary>
public enum TextAnchor
{
    /// <summary>The beginning.</summary>
    Start,

    /// <summary>The middle of the width.</summary>
    Middle,

    /// <summary>The end.</summary>
    End,
}
