using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Imaging.Digitising;
using SectionScan.Porting.Lengthwise;

namespace SectionScan.Jobs.Lengthwise;

/// <summary>A lengthwise shape to be read, and what for.</summary>
/// <param name="Input">A photo, a section document, or an outline as DXF, SVG or CSV.</param>
/// <param name="Reference">The shape to compare with, named in the same way; null without.</param>
/// <param name="Alignment">How the two are laid on each other.</param>
/// <param name="FaceIsRight">True when the manifold face is the end more to the right.</param>
/// <param name="Settings">How photos are digitised.</param>
/// <param name="OutputFolder">Where drawings, template and tables go; null writes none.</param>
/// <param name="Paper">The template's paper.</param>
/// <param name="Unit">What lengths are labelled in.</param>
public sealed record LengthwiseOrder(
    string Input,
    string? Reference,
    LengthwiseAlignment Alignment,
    bool FaceIsRight,
    DigitiseSettings Settings,
    string? OutputFolder,
    PaperSize Paper,
    LengthUnit Unit);
