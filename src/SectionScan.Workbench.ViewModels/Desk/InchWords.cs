using System.Globalization;
using System.Text.RegularExpressions;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>Sentences with lengths in millimetres, as the layers below write them, for a person who reads inches.</summary>
public static partial class InchWords
{
    /// <summary>The sentence in the unit of the window: as it is, or with every length, area and volume in inches, as fine as it was told.</summary>
    /// <param name="said">A sentence in millimetres.</param>
    /// <param name="isInch">True for inches.</param>
    public static string Of(string? said, bool isInch) => !isInch ? said ?? string.Empty : Lengths().Replace(said ?? string.Empty, found =>
    {
        var power = found.Groups["power"].Value switch { "2" or "²" => 2, "3" or "³" => 3, _ => 1 };
        var numbers = Number().Replace(found.Groups["numbers"].Value, number => InInches(number.Value, power));
        return $"{numbers} in{power switch { 2 => "²", 3 => "³", _ => string.Empty }}";
    });

    /// <summary>A number of mm, mm² or mm³ in inches, with as many decimals more as an inch is coarser.</summary>
    private static string InInches(string mm, int power)
    {
        var point = mm.IndexOf('.', StringComparison.Ordinal);
        var decimals = (point < 0 ? 0 : mm.Length - point - 1) + 1 + power;
        var value = double.Parse(mm, CultureInfo.InvariantCulture) / Math.Pow(Inch.Mm, power);
        return value.ToString(value == 0 ? "0" : "F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    /// <summary>One length, or several that share their unit: "0.5 to 100 mm", "between 0 and 50 mm", "40 × 30 mm", "at (24, 4) mm".</summary>
    [GeneratedRegex(@"(?<numbers>(?:(?<=between )\d+(?:\.\d+)? and |\(-?\d+(?:\.\d+)?, |(?<![\w.])\d+(?:\.\d+)? (?:to|×|±) [+−-]?)?(?<![\w.])-?\d+(?:\.\d+)?\)?)[ \u00a0]mm(?<power>[²³23]?)(?![\w⁴])")]
    private static partial Regex Lengths();

    [GeneratedRegex(@"(?<!\w)-?\d+(?:\.\d+)?")]
    private static partial Regex Number();
}
