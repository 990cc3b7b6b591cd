namespace SectionScan.Porting.Judgements;

/// <summary>A sentence whose quantities follow the unit that a person reads.</summary>
/// <param name="words">Writes the sentence.</param>
public sealed class Wording(Func<UnitWords, string> words)
{
    /// <summary>A sentence without quantities of length.</summary>
    public static implicit operator Wording(string text) => new(_ => text);

    /// <summary>The sentence in a unit.</summary>
    public string In(UnitWords unit) => words(unit);

    /// <summary>The sentence in millimetres, as documents keep it.</summary>
    public override string ToString() => words(UnitWords.Millimetre);
}
