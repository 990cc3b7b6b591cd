using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Checks;

/// <summary>Why a photo is refused before anything in it is measured.</summary>
public static class CheckProblems
{
    /// <summary>A photo that is poor in one respect; the code is the rule's.</summary>
    public static Problem Refused(string where, CheckItem item)
    {
        ArgumentNullException.ThrowIfNull(item);
        var limit = FormattableString.Invariant($"{item.PoorLimit:0.##}");
        return new(item.Code, $"{item.Finding} The limit is {limit}{(item.Unit == "1" ? string.Empty : " " + item.Unit)}.", where, item.Remedy);
    }
}
