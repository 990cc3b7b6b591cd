namespace SectionScan.Metrology.Results;

/// <summary>Why something could not be done, in words a person can act on. Not an exception: the world said no.</summary>
/// <param name="Code">A stable, machine-readable name such as <c>too-few-corners</c>; never translated, never reused.</param>
/// <param name="What">What happened, with the numbers that matter; one sentence.</param>
/// <param name="Where">The photo, section, file or option concerned.</param>
/// <param name="Remedy">What the person can do about it; an instruction.</param>
public sealed record Problem(string Code, string What, string Where, string Remedy)
{
    /// <summary>What happened and what to do about it, where the place is told already.</summary>
    public string InWords() => $"{What} {Remedy}";

    /// <summary>The whole message: where, what, what to do.</summary>
    public override string ToString() => $"{Where}: {InWords()}";
}
