using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Files;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>Millimetres or inches, for all windows; kept beside the jobs.</summary>
public sealed class UnitChoice
{
    private const string FileName = "units.txt";

    private readonly string path;

    /// <summary>Reads what was chosen last; millimetres when nothing was.</summary>
    /// <param name="folder">The folder that holds the jobs.</param>
    public UnitChoice(string folder)
    {
        path = Path.Combine(folder, FileName);
        IsInch = TextFile.Read(path, 100).TryGet(out var text, out _) && text.Trim() == "in";
    }

    /// <summary>Told when it changes.</summary>
    public event EventHandler? Changed;

    /// <summary>True for inches.</summary>
    public bool IsInch { get; private set; }

    /// <summary>The same for drawings and tables.</summary>
    public LengthUnit OfLength => IsInch ? LengthUnit.Inch : LengthUnit.Millimetre;

    /// <summary>Chooses. A choice that cannot be kept still holds until the program ends.</summary>
    public void Set(bool isInch)
    {
        IsInch = isInch;
        _ = OutputFolder.WriteFile(path, isInch ? "in\n" : "mm\n");
        Changed?.Invoke(this, EventArgs.Empty);
    }
}
