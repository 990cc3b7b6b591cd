using System.Globalization;

namespace SectionScan.Imaging.Checks;

/// <summary>One respect in which a photo was looked at.</summary>
/// <param name="Name">What was looked at, such as "sharpness".</param>
/// <param name="Code">A stable name; that of the problem when the verdict is poor.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Value">What was measured.</param>
/// <param name="Unit">Its unit: px, mm, deg, %, 1 (a ratio or a count).</param>
/// <param name="FairLimit">Up to here (down to here, where less is worse) it is good.</param>
/// <param name="PoorLimit">Beyond this it is refused; null where nothing is refused because the uncertainty tells it all.</param>
/// <param name="Finding">The same in a sentence.</param>
/// <param name="Remedy">What to do about it; empty when it is good.</param>
public sealed record CheckItem(
    string Name, string Code, CheckVerdict Verdict, double Value, string Unit, double FairLimit, double? PoorLimit, string Finding, string Remedy)
{
    /// <summary>True where a small value is the bad one.</summary>
    public bool IsWorseBelow { get; init; }

    /// <summary>A value or limit of this kind to three digits, with its unit: "21.5 %", "0.085 mm".</summary>
    public string InWords(double value)
    {
        var format = Math.Abs(value) switch
        {
            >= 100 => "0",
            >= 10 => "0.#",
            >= 1 => "0.##",
            _ => "0.###",
        };
        var text = value.ToString(format, CultureInfo.InvariantCulture);
        return Unit == "1" ? text : $"{text} {Unit}";
    }
}
