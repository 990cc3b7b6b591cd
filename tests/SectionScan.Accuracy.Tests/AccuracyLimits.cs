using SectionScan.Testing.Accuracy;

namespace SectionScan.Accuracy.Tests;

/// <summary>How far a section may be from the truth.</summary>
/// <param name="AreaPercent">Of the area.</param>
/// <param name="LengthMm">Of width and height, in the section's true axes.</param>
/// <param name="OutlineMm">Of 95 % of the outline's length; null where that is not judged.</param>
internal sealed record AccuracyLimits(double AreaPercent, double LengthMm, double? OutlineMm)
{
    /// <summary>What a section is good for in the shop.</summary>
    public static AccuracyLimits Usable { get; } = new(1, 0.15, null);

    /// <summary>What the pixels hold, with a lens profile.</summary>
    public static AccuracyLimits Tight { get; } = new(0.25, 0.05, 0.05);

    /// <summary>What the pixels hold without a lens profile: twice as much.</summary>
    public static AccuracyLimits TightWithoutProfile { get; } = new(0.5, 0.1, 0.1);

    /// <summary>What is wrong with a photo's sections, one line each; empty when all is well.</summary>
    public IEnumerable<string> Broken(PhotoVerdict verdict)
    {
        if (verdict.Problem is { } problem)
        {
            yield return $"{verdict.Name}: refused, {problem.Code}";
        }

        foreach (var missed in verdict.Missed)
        {
            yield return $"{verdict.Name} {missed.Name}: not found";
        }

        if (verdict.Invented > 0)
        {
            yield return $"{verdict.Name}: {verdict.Invented} sections where none lies";
        }

        foreach (var found in verdict.Found)
        {
            if (!found.HasRightStation)
            {
                yield return FormattableString.Invariant($"{verdict.Name} {found.Truth.Name}: taken for station {found.Section.Station}");
            }

            foreach (var broken in Broken(found))
            {
                yield return $"{verdict.Name} {found.Truth.Name}: {broken}";
            }
        }
    }

    private IEnumerable<string> Broken(FoundSection found)
    {
        var score = found.Score;
        if (Math.Abs(score.AreaErrorPercent) > AreaPercent)
        {
            yield return FormattableString.Invariant($"area off by {score.AreaErrorPercent:0.00} %, allowed {AreaPercent}");
        }

        if (Math.Abs(score.WidthErrorMm) > LengthMm)
        {
            yield return FormattableString.Invariant($"width off by {score.WidthErrorMm:0.000} mm, allowed {LengthMm}");
        }

        if (Math.Abs(score.HeightErrorMm) > LengthMm)
        {
            yield return FormattableString.Invariant($"height off by {score.HeightErrorMm:0.000} mm, allowed {LengthMm}");
        }

        if (score.Centred.Percentile95Mm > OutlineMm)
        {
            yield return FormattableString.Invariant($"95 % of the outline within {score.Centred.Percentile95Mm:0.000} mm, allowed {OutlineMm}");
        }
    }
}
