namespace SectionScan.Archive.Storage;

/// <summary>What a check of the whole library found.</summary>
/// <param name="EntryCount">How many entries it holds, removed ones too.</param>
/// <param name="RevisionCount">How many revisions.</param>
/// <param name="DocumentCount">How many documents; each was compared with its hash.</param>
/// <param name="PhotoCount">How many photos are kept; each was compared with its hash.</param>
/// <param name="Findings">What is wrong, in plain sentences; empty when all is well.</param>
public sealed record IntegrityReport(long EntryCount, long RevisionCount, long DocumentCount, long PhotoCount, IReadOnlyList<string> Findings)
{
    /// <summary>True when nothing is wrong.</summary>
    public bool IsSound => Findings.Count == 0;
}
