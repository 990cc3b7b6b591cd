using SectionScan.Metrology.Results;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>What can be wrong with what a person types at Decide.</summary>
public static class DecideProblems
{
    /// <summary>A limit that no port has.</summary>
    public static Problem LimitUnlikely(string measure, string unit, double least, double most) => new(
        "limit-unlikely", FormattableString.Invariant($"A limit of the {measure} lies from {least:0} to {most:0} {unit}."), measure,
        "Give the most that it may be, or leave it empty for no limit.");

    /// <summary>A keep-out without what it needs.</summary>
    public static Problem KeepOutIncomplete(string what) => new(
        "keep-out-incomplete", what, "keep-out", "Fill in the field and add it again.");

    /// <summary>A file that is longer than such a file may be.</summary>
    public static Problem FileTooLong(string name) => new(
        "file-too-long", "The file is longer than such a file can be.", name, "Choose the file that was meant.");
}
