namespace SectionScan.Porting.Corrections;

/// <summary>A correction by hand, as the section document keeps it.</summary>
/// <param name="Kind">What was done: "move-point", "redraw-stretch", "exclude-bubble", "turn-up", "set-station".</param>
/// <param name="XMm">x of the place, mm, section frame as it was before the correction; zero where there is no place.</param>
/// <param name="YMm">y of the place, mm.</param>
/// <param name="Amount">How much: the largest move of the outline in mm, the turn in degrees, or the station.</param>
/// <param name="StandardUncertainty">u that it brings into the outline there, mm (for a turn: rad); zero for a station.</param>
public sealed record HandCorrection(string Kind, double XMm, double YMm, double Amount, double StandardUncertainty);
