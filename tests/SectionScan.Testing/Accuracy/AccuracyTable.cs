using System.Globalization;
using System.Text;

namespace SectionScan.Testing.Accuracy;

/// <summary>Prints the errors of sections and what they come to: worst, median and 95th percentile of each figure.</summary>
public static class AccuracyTable
{
    private const string Signed = "+0.000;-0.000;+0.000";
    private const string Plain = "0.000";

    private static readonly (string Name, Func<FoundSection, double> Of, string Format)[] Figures =
    [
        ("area %", f => f.Score.AreaErrorPercent, Signed),
        ("width mm", f => f.Score.WidthErrorMm, Signed),
        ("height mm", f => f.Score.HeightErrorMm, Signed),
        ("offset mm", f => f.Score.Centred.MeanSignedMm, Signed),
        ("p95 mm", f => f.Score.Centred.Percentile95Mm, Plain),
        ("max mm", f => f.Score.Centred.MaximumMm, Plain),
        ("placed mm", f => f.Score.CentroidErrorMm ?? double.NaN, Plain),
    ];

    /// <summary>One line a section, and a line for everything that went wrong with a photo.</summary>
    public static string Sections(IEnumerable<PhotoVerdict> verdicts)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        var text = new StringBuilder();
        text.Append("photo                     section     ").AppendJoin(' ', Figures.Select(f => f.Name.PadLeft(9))).Append('\n');
        foreach (var verdict in verdicts)
        {
            foreach (var found in verdict.Found)
            {
                text.Append(CultureInfo.InvariantCulture, $"{verdict.Name,-26}{found.Truth.Name,-12}");
                text.AppendJoin(' ', Figures.Select(f => Shown(f.Of(found), f.Format)));
                text.Append(found.HasRightStation ? "\n" : FormattableString.Invariant($"  WRONG STATION {found.Section.Station}\n"));
            }

            foreach (var missed in verdict.Missed)
            {
                text.Append(CultureInfo.InvariantCulture, $"{verdict.Name,-26}{missed.Name,-12}MISSED\n");
            }

            if (verdict.Invented > 0)
            {
                text.Append(CultureInfo.InvariantCulture, $"{verdict.Name,-26}INVENTED: {verdict.Invented}\n");
            }

            foreach (var problem in (verdict.Photo?.Refused ?? []).Prepend(verdict.Problem).OfType<Metrology.Results.Problem>())
            {
                text.Append(CultureInfo.InvariantCulture, $"{verdict.Name,-26}refused: {problem.Code}: {problem.What}\n");
            }
        }

        return text.ToString();
    }

    /// <summary>Counts, and of the size of each error the median, the 95th percentile and the worst.</summary>
    public static string Summary(string title, IReadOnlyCollection<PhotoVerdict> verdicts)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        var found = verdicts.SelectMany(v => v.Found).ToArray();
        var text = new StringBuilder();
        text.Append(
            CultureInfo.InvariantCulture,
            $"{title}: {verdicts.Count} photos, {found.Length} sections found, {verdicts.Sum(v => v.Missed.Count)} missed, {verdicts.Sum(v => v.Invented)} invented, {found.Count(f => !f.HasRightStation)} with a wrong station\n");
        if (found.Length > 0)
        {
            text.Append("                ").AppendJoin(' ', Figures.Select(f => f.Name.PadLeft(9))).Append('\n');
            AppendRow("median", 0.5);
            AppendRow("95th percentile", 0.95);
            AppendRow("worst", 1);
        }

        return text.ToString();

        void AppendRow(string name, double share) => text.Append(name.PadRight(16)).AppendJoin(
            ' ', Figures.Select(f => Shown(Percentile([.. found.Select(s => Math.Abs(f.Of(s)))], share), Plain)))
            .Append('\n');
    }

    // Rounded first: a small negative number would else read "-+0.000".
    private static string Shown(double value, string format) => (Math.Round(value, 3) + 0).ToString(format, CultureInfo.InvariantCulture).PadLeft(9);

    // The smallest value that at least this share of the values does not exceed.
    private static double Percentile(double[] values, double share)
    {
        Array.Sort(values);
        return values[Math.Clamp((int)Math.Ceiling(share * values.Length) - 1, 0, values.Length - 1)];
    }
}
