using System.ComponentModel;
using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Cli.Options;

/// <summary>How true a target was printed: measured over nominal length of its check bars, across and up the sheet.</summary>
/// <param name="X">Across the sheet, along the target's x.</param>
/// <param name="Y">Up the sheet, along the target's y.</param>
[TypeConverter(typeof(PrintRatioOptionConverter))]
public sealed record PrintRatioOption(double X, double Y)
{
    /// <summary>The smallest ratio taken for a print; "fit to page" of Letter on A5 is already beyond it.</summary>
    public const double Lowest = 0.8;

    /// <summary>The largest ratio taken for a print.</summary>
    public const double Highest = 1.25;

    /// <summary>Printed true to size.</summary>
    public static PrintRatioOption True { get; } = new(1, 1);

    /// <summary>Reads <c>X,Y</c>, such as <c>0.998,1.002</c>: decimal points, one comma.</summary>
    /// <returns>The two ratios, both within <see cref="Lowest"/> and <see cref="Highest"/>, or a problem of <see cref="OptionProblems"/>.</returns>
    public static Result<PrintRatioOption> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split(',');
        if (parts.Length != 2 || !TryRead(parts[0], out var x) || !TryRead(parts[1], out var y))
        {
            return OptionProblems.PrintRatioNotTwoNumbers(text);
        }

        return IsPlausible(x) && IsPlausible(y)
            ? new PrintRatioOption(x, y)
            : OptionProblems.PrintRatioOutOfRange(text, Lowest, Highest);
    }

    /// <summary>The two ratios as they are given on the command line.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{X},{Y}");

    private static bool TryRead(string text, out double ratio) => double.TryParse(
        text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite,
        CultureInfo.InvariantCulture, out ratio);

    // False for what is not a number, too.
    private static bool IsPlausible(double ratio) => ratio is >= Lowest and <= Highest;
}
