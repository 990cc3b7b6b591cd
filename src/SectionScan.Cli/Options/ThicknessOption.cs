using System.Globalization;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Cli.Options;

/// <summary>The thickness of slices as it is given on the command line: always in millimetres.</summary>
internal static class ThicknessOption
{
    private const double MostMm = 60;

    // Nobody slices rubber thinner; 0.02 to 1 in are 0.5 to 25 mm.
    private const double LeastInInchesMm = 1;

    /// <summary>What is wrong with a thickness, or null.</summary>
    /// <param name="thicknessMm">As given, or null.</param>
    /// <param name="units">What results are shown in: who asks for inches and gives less than a millimetre has likely measured in inches, and
    /// the outlines would be too large by some percent.</param>
    public static string? Wrong(double? thicknessMm, UnitOption units) => thicknessMm switch
    {
        null or 0 => null,
        { } given when !(given is > 0 and <= MostMm) =>
            string.Create(CultureInfo.InvariantCulture, $"--thickness {given} is out of range: give millimetres from 0 to {MostMm}, measured with a calliper."),
        { } given when units == UnitOption.Inch && given < LeastInInchesMm => string.Create(
            CultureInfo.InvariantCulture,
            $"--thickness {given} is less than a millimetre. It is given in millimetres, whatever --units says: for {given} in write --thickness {given * Inch.Mm:0.00}. For a slice that is so thin leave --units away."),
        _ => null,
    };
}
