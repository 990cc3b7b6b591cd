using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using SectionScan.Metrology.Quantities;
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
        var text = (typed ?? string.Empty).Trim().Replace('−', '-');
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

    /// <summary>Reads a length or an area in the unit shown, into mm or mm²; see <see cref="TryRead(string?, string, out double?, out Problem?)"/>.</summary>
    public static bool TryRead(
        string? typed, string where, FieldUnit unit, bool isInch, out double? value, [NotNullWhen(false)] out Problem? problem)
    {
        var isRead = TryRead(typed, where, out value, out problem);
        value *= Factor(unit, isInch);
        return isRead;
    }

    /// <summary>A number as its field shows it; empty for none.</summary>
    /// <param name="value">The number, in mm or mm² for a length or an area.</param>
    /// <param name="unit">What it is.</param>
    /// <param name="isInch">True for inches.</param>
    public static string Text(double? value, FieldUnit unit, bool isInch) => value is not { } number || !double.IsFinite(number)
        ? string.Empty
        : (number / Factor(unit, isInch)).ToString(isInch && unit != FieldUnit.None ? "0.#####" : "0.###", CultureInfo.InvariantCulture);

    /// <summary>The unit behind a field's name; null for none.</summary>
    public static string? UnitWord(FieldUnit unit, bool isInch) => unit switch
    {
        FieldUnit.Length => isInch ? "in" : "mm",
        FieldUnit.Area => isInch ? "in²" : "mm²",
        _ => null,
    };

    private static double Factor(FieldUnit unit, bool isInch) => !isInch ? 1 : unit switch
    {
        FieldUnit.Length => Inch.Mm,
        FieldUnit.Area => Inch.Mm * Inch.Mm,
        _ => 1,
    };
}
