using SectionScan.Jobs.Comparing;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Proof;

namespace SectionScan.Jobs.Proving;

/// <summary>A finished port held against its targets, station by station.</summary>
/// <param name="Proved">The sections that could be proved; may be empty.</param>
/// <param name="Unproved">Why others could not; first those of a station that the other side lacks.</param>
public sealed record PortProof(IReadOnlyList<ProvedSection> Proved, IReadOnlyList<Problem> Unproved)
{
    /// <summary>Proves a port.</summary>
    /// <param name="targets">The targets.</param>
    /// <param name="finished">The finished sections.</param>
    /// <param name="terms">The terms, the same for every station.</param>
    /// <param name="stop">Ends it between two stations.</param>
    /// <returns>The proof, or why the two ports cannot be put together.</returns>
    public static Result<PortProof> Of(IReadOnlyList<SectionInput> targets, IReadOnlyList<SectionInput> finished, ProofTerms terms, CancellationToken stop = default) =>
        SectionFiles.Paired(targets, finished).Then<PortProof>(paired =>
        {
            var proved = new List<ProvedSection>();
            var unproved = paired.Missing.ToList();
            foreach (var (target, section) in paired.Pairs)
            {
                stop.ThrowIfCancellationRequested();
                if (ProvedSection.Of(target, section, terms).TryGet(out var made, out var problem))
                {
                    proved.Add(made);
                }
                else
                {
                    unproved.Add(problem);
                }
            }

            return new PortProof(proved, unproved);
        });
}
