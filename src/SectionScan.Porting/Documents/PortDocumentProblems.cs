using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Documents;

/// <summary>What can be wrong with a port document.</summary>
public static class PortDocumentProblems
{
    /// <summary>The text is no port document.</summary>
    public static Problem NotAPortDocument(string where, string reason) => new(
        "not-a-port-document", $"This is not a port document: {reason}.", where,
        "Make one with: sectionscan port SECTION... --stations FILE --out FILE");
}
