using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Templates;
using SectionScan.Porting.Templates;

namespace SectionScan.Jobs.Templates;

/// <summary>What templates are wanted.</summary>
/// <param name="Sections">Section documents, outlines as CSV, or entries of the library, as <see cref="Comparing.SectionInput"/> reads them.</param>
/// <param name="Kinds">Plugs, plates or both.</param>
/// <param name="Stages">Rough, finish or both.</param>
/// <param name="PortName">The port's name to write on them; may be empty.</param>
/// <param name="AllowanceMm">What roughing leaves for finishing, mm.</param>
/// <param name="ClearanceMm">How much the edge stands off the port, mm.</param>
/// <param name="LineWidthMm">The width of the printed line, mm.</param>
/// <param name="KerfMm">The width that the cutter takes, for DXF, mm.</param>
/// <param name="Hold">How plugs are held.</param>
/// <param name="Paper">The paper.</param>
/// <param name="Correction">The printer's measured ratios.</param>
/// <param name="Unit">The unit of lengths in captions and of the DXF.</param>
public sealed record TemplateOrder(
    IReadOnlyList<string> Sections,
    IReadOnlyList<TemplateKind> Kinds,
    IReadOnlyList<TemplateStage> Stages,
    string PortName,
    double AllowanceMm,
    double ClearanceMm,
    double LineWidthMm,
    double KerfMm,
    PlugHold Hold,
    PaperSize Paper,
    PrintCorrection Correction,
    LengthUnit Unit);
