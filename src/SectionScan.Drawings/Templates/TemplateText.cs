using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Templates;

/// <summary>A line of lettering on a template.</summary>
/// <param name="Middle">The middle of its baseline, section frame, mm.</param>
/// <param name="Text">The text.</param>
/// <param name="CapHeightMm">Height of a capital letter, mm.</param>
public sealed record TemplateText(SectionPoint Middle, string Text, double CapHeightMm);
