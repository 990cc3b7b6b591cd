namespace SectionScan.Imaging.Checks;

/// <summary>Two limits on one number of a photo.</summary>
/// <param name="Name">What is looked at.</param>
/// <param name="Code">A stable name.</param>
/// <param name="Unit">The number's unit.</param>
/// <param name="FairLimit">The last good value.</param>
/// <param name="PoorLimit">The last value that is measured with; null: never refused.</param>
/// <param name="Remedy">What to do about it.</param>
/// <param name="IsWorseBelow">True for numbers that should be large.</param>
internal sealed record CheckRule(
    string Name, string Code, string Unit, double FairLimit, double? PoorLimit, string Remedy, bool IsWorseBelow = false)
{
    /// <summary>Judges a value.</summary>
    /// <param name="value">What was measured.</param>
    /// <param name="finding">The same in a sentence.</param>
    public CheckItem Judge(double value, string finding)
    {
        var verdict = PoorLimit is { } poor && IsBeyond(value, poor) ? CheckVerdict.Poor
            : IsBeyond(value, FairLimit) ? CheckVerdict.Fair : CheckVerdict.Good;
        return new(Name, Code, verdict, value, Unit, FairLimit, PoorLimit, finding, verdict == CheckVerdict.Good ? string.Empty : Remedy)
        {
            IsWorseBelow = IsWorseBelow,
        };
    }

    private bool IsBeyond(double value, double limit) => IsWorseBelow ? value < limit : value > limit;
}
