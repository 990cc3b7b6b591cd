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

    /// <summary>Two points and their distance are not five numbers.</summary>
    public static Problem PointsNotFiveNumbers(string value) => new(
        "points-not-five-numbers",
        $"'{value}' is not two points and a distance.",
        "--points",
        "Give x,y of both points in px of the photo as displayed and their distance in millimetres: --points 210,1480,3350,1492,200");

    /// <summary>The corners of a rectangle are not eight numbers.</summary>
    public static Problem RectangleNotEightNumbers(string value) => new(
        "rectangle-not-eight-numbers",
        $"'{value}' is not four corners.",
        "--rectangle",
        "Give x,y in px of top left, top right, bottom right and bottom left: --rectangle 300,210,3700,240,3690,2650,280,2600");

    /// <summary>A size is not width and height.</summary>
    public static Problem SizeNotTwoNumbers(string value) => new(
        "size-not-two-numbers",
        $"'{value}' is not a width and a height.",
        "--size",
        "Give width x height in millimetres with an x between them: --size 297x210");

    /// <summary>Places are not pairs of numbers.</summary>
    public static Problem PlacesNotPairs(string value) => new(
        "places-not-pairs",
        $"'{value}' is not a list of places.",
        "places of studs, holes or pivot",
        "Give x,y of each place in millimetres, one after the other: -8.5,-34,94.5,-33.5");
}
