using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Cli.Options;

/// <summary>What can be wrong with the value of an option.</summary>
public static class OptionProblems
{
    /// <summary>The unit is neither millimetre nor inch.</summary>
    public static Problem UnknownUnit(string value) => new(
        "unknown-unit",
        $"'{value}' is not a unit that lengths can be shown in.",
        "--units",
        "Give mm or in.");

    /// <summary>The print ratio is not two numbers.</summary>
    public static Problem PrintRatioNotTwoNumbers(string value) => new(
        "print-ratio-not-two-numbers",
        $"'{value}' is not two numbers with a comma between them.",
        "--print-ratio",
        "Measure both check bars with a caliper and give measured over nominal, across first, with decimal points: --print-ratio 0.998,1.002");

    /// <summary>A print ratio is far from 1.</summary>
    public static Problem PrintRatioOutOfRange(string value, double lowest, double highest) => new(
        "print-ratio-out-of-range",
        string.Create(CultureInfo.InvariantCulture, $"'{value}' is no print ratio: each number must lie between {lowest:0.##} and {highest:0.##}."),
        "--print-ratio",
        "Give measured over nominal length of each check bar (199.6 mm read on the 200 mm bar is 0.998), not a length or a percentage.");
}
