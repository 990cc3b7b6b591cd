using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>Numbers that a person types. What is no number changes nothing and is told, never taken for an empty field.</summary>
public static class NumberEntry
{
    /// <summary>Reads a number.</summary>
    /// <param name="typed">What stands in the field.</param>
    /// <param name="where">The field's name.</param>
    /// <param name="value">The number; null when the field is empty.</param>
    /// <param name="problem">Why it is none, or null.</param>
    public static bool TryRead(string? typed, string where, out double? value, [NotNullWhen(false)] out Problem? problem)
    {
        var text = (typed ?? string.Empty).Trim();
        (value, problem) = (null, null);
        if (text.Length == 0)
        {
            return true;
        }

        if (double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
            && double.IsFinite(number))
        {
            value = number;
            return true;
        }

        problem = new(
            "not-a-number", $"\"{text}\" is not a number; the entry stays as it was.", where,
            text.Contains(',', StringComparison.Ordinal) ? "Write a point before the decimals, not a comma: 6.5." : "Write digits, with a point before the decimals: 6.5.");
        return false;
    }
}
