using System.ComponentModel;
using SectionScan.Metrology.Results;

namespace SectionScan.Cli.Options;

/// <summary>Width and height of a thing.</summary>
/// <param name="WidthMm">Width, mm.</param>
/// <param name="HeightMm">Height, mm.</param>
/// <param name="Text">As it was given.</param>
[TypeConverter(typeof(SizeOptionConverter))]
public sealed record SizeOption(double WidthMm, double HeightMm, string Text)
{
    /// <summary>Reads <c>WxH</c>, such as <c>297x210</c>.</summary>
    public static Result<SizeOption> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return NumberList.Read(text, 'x', 2) is { } n && n[0] > 0 && n[1] > 0
            ? new SizeOption(n[0], n[1], text)
            : OptionProblems.SizeNotTwoNumbers(text);
    }
}
