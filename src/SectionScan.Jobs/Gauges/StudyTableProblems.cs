using System.Globalization;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Gauges;

/// <summary>What can be wrong with the table of a gauge study, or with a photo in it.</summary>
public static class StudyTableProblems
{
    private const string Example = "photo,plug,shape,width_mm,height_mm,thickness_mm,u_mm,person,camera,sheet";

    /// <summary>No head line, or one without the columns that are needed.</summary>
    public static Problem NoHead(string where, IEnumerable<string> required) => new(
        "study-no-head",
        $"The table does not begin with a line that names its columns ({string.Join(", ", required)} at least) and go on with a line for each photo.",
        where,
        $"Begin it with: {Example}");

    /// <summary>A column that means nothing here, and may hold what somebody counts on.</summary>
    public static Problem UnknownColumn(string where, string column, IEnumerable<string> known) => new(
        "study-unknown-column", $"The column {column} is not known.", where, $"Known are {string.Join(", ", known)}; rename it or take it away.");

    /// <summary>More lines than a study has.</summary>
    public static Problem TooLong(string where, int most) => new(
        "study-too-long", string.Create(CultureInfo.InvariantCulture, $"The table has more than {most} lines."), where, "Give one study only.");

    /// <summary>A line that cannot be used.</summary>
    public static Problem BadLine(string where, int line, string reason) => new(
        "study-bad-line", string.Create(CultureInfo.InvariantCulture, $"Line {line} cannot be used: {reason}."), where, "Correct it, and run the study again.");

    /// <summary>A photo that does not show one thing alone.</summary>
    public static Problem NotOnePlug(string where, int seen) => new(
        "not-one-plug",
        string.Create(CultureInfo.InvariantCulture, $"{seen} things are seen in the photo where one plug alone should lie."),
        where,
        "Lay one plug in the window, nothing else, and retake the photo.");

    /// <summary>What is seen has not the plug's size.</summary>
    public static Problem OtherPlug(string where, Plug plug, PlugSighting seen)
    {
        ArgumentNullException.ThrowIfNull(plug);
        return new(
            "other-plug",
            string.Create(
                CultureInfo.InvariantCulture,
                $"What is seen is not plug {plug.Name}: it is {seen.LongerMm:0.00} × {seen.ShorterMm:0.00} mm, by the table {plug.WidthMm:0.00} × {plug.HeightMm:0.00} mm."),
            where,
            "Correct shape and sizes in the table, check --print-ratio and the plug's thickness, or name the right photo.");
    }

    /// <summary>What is seen has no straight sides where the plug has.</summary>
    public static Problem NotStraight(string where, Plug plug, double roughnessMm)
    {
        ArgumentNullException.ThrowIfNull(plug);
        return new(
            "plug-not-straight",
            string.Create(CultureInfo.InvariantCulture, $"The sides of plug {plug.Name} stray from straight by {roughnessMm:0.00} mm (root mean square)."),
            where,
            "Check the plug's shape in the table; light it evenly, without hard shadows beside it, and retake the photo.");
    }

    /// <summary>Photos on different targets.</summary>
    public static Problem TwoTargets(string where) => new(
        "study-two-targets", "Some photos show the sheet and some the card.", where, "Make a study of its own for each.");
}
