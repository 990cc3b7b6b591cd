using System.Globalization;

namespace SectionScan.Cli.Options;

/// <summary>Numbers in one option, between commas or another sign.</summary>
internal static class NumberList
{
    /// <summary>Reads exactly so many finite numbers with decimal points; null when the text is anything else.</summary>
    public static double[]? Read(string text, char separator, int count)
    {
        var parts = text.Split(separator);
        var numbers = new double[count];
        for (var i = 0; i < count; i++)
        {
            if (parts.Length != count || !double.TryParse(parts[i], NumberStyles.Float, CultureInfo.InvariantCulture, out numbers[i])
                || !double.IsFinite(numbers[i]))
            {
                return null;
            }
        }

        return numbers;
    }
}
