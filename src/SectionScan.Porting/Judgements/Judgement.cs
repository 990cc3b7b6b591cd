namespace SectionScan.Porting.Judgements;

/// <summary>A finding in plain words: what was found, what it means for the engine, and what that rests on.</summary>
/// <param name="Code">A stable name for programs, such as <c>mean-speed-low</c>.</param>
/// <param name="Level">How much it matters.</param>
/// <param name="Finding">What was found, with numbers; one sentence.</param>
/// <param name="Consequence">What it means; one or two sentences.</param>
/// <param name="Basis">The source, or "common practice, no source".</param>
public sealed record Judgement(string Code, JudgementLevel Level, Wording Finding, Wording Consequence, string Basis)
{
    /// <summary>Finding and consequence in a unit.</summary>
    public string In(UnitWords unit) => $"{Finding.In(unit)} {Consequence.In(unit)}";
}
