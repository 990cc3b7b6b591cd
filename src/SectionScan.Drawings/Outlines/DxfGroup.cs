using System.Globalization;

namespace SectionScan.Drawings.Outlines;

/// <summary>One group of a DXF file: a code that tells what the value is, and the value.</summary>
/// <param name="Code">The group code.</param>
/// <param name="Value">The value, as text.</param>
/// <param name="Line">The line of the code in the file, from 1.</param>
internal readonly record struct DxfGroup(int Code, string Value, int Line)
{
    /// <summary>The value as a finite number, or null.</summary>
    public double? Number => double.TryParse(Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;

    /// <summary>The value as a whole number, or null.</summary>
    public int? Whole => int.TryParse(Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : null;
}
