namespace SectionScan.Imaging.Scales;

/// <summary>A scanner's resolution.</summary>
/// <param name="Across">Across the stored picture.</param>
/// <param name="Down">Down the stored picture.</param>
internal readonly record struct DotsPerInch(double Across, double Down);
