namespace SectionScan.Porting.Judgements;

/// <summary>How much a judgement matters.</summary>
public enum JudgementLevel
{
    /// <summary>Within what is usual.</summary>
    Usual,

    /// <summary>Cannot be told, or worth a look.</summary>
    Look,

    /// <summary>Outside what is usual: it has a consequence.</summary>
    Outside,
}
