namespace SectionScan.Drawings.Templates;

/// <summary>How a plug plate is held in the port.</summary>
/// <param name="SheetMm">Thickness of the sheet that plug and handle are cut from, mm: the handle's tongue goes through a slot of this
/// width. Zero for no handle.</param>
/// <param name="StemMm">Diameter of a round hole for a rod or screw instead of a handle, mm; zero for none.</param>
public sealed record PlugHold(double SheetMm, double StemMm)
{
    /// <summary>The sheet that is taken for granted, mm: what tin snips and a fretsaw still cut (common practice, no source).</summary>
    public const double UsualSheetMm = 1.5;

    /// <summary>A handle of its own with a tongue.</summary>
    public static PlugHold Handle(double sheetMm = UsualSheetMm) => new(sheetMm, 0);

    /// <summary>A hole for a rod or screw.</summary>
    public static PlugHold Stem(double stemMm) => new(0, stemMm);
}
