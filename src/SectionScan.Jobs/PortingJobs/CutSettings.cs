using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Templates;
using SectionScan.Porting.Templates;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>How a job's cut is planned and its templates are made.</summary>
public sealed record CutSettings
{
    /// <summary>The largest allowance, clearance, kerf and stem, mm.</summary>
    public const double MostMm = 20;

    /// <summary>What roughing leaves for finishing, mm.</summary>
    public double AllowanceMm { get; init; } = SectionTemplate.UsualAllowanceMm;

    /// <summary>True for plugs that go into the port.</summary>
    public bool HasPlugs { get; init; } = true;

    /// <summary>True for plates whose cut-out goes over a mould.</summary>
    public bool HasPlates { get; init; }

    /// <summary>How much a template's edge stands off the port, mm.</summary>
    public double ClearanceMm { get; init; }

    /// <summary>The width that a cutter takes, for DXF, mm.</summary>
    public double KerfMm { get; init; }

    /// <summary>Thickness of the sheet that is cut, mm: plugs get a slot and a handle; zero for no handle.</summary>
    public double SheetMm { get; init; } = PlugHold.UsualSheetMm;

    /// <summary>Diameter of a round hole in a plug instead of the handle, mm; zero for none.</summary>
    public double StemMm { get; init; }

    /// <summary>The paper's name.</summary>
    public string Paper { get; init; } = PaperSize.A4.Name;

    /// <summary>True to correct the print by the check bars measured at Prepare.</summary>
    public bool IsPrintCorrected { get; init; } = true;
}
