using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Gauges;

/// <summary>What became of a gauge study.</summary>
/// <param name="Study">The study, or null when something stood in its way.</param>
/// <param name="Problems">What stood in its way, photo by photo.</param>
/// <param name="Cautions">What a person should know of it, in sentences.</param>
public sealed record GaugeOutcome(GaugeStudy? Study, IReadOnlyList<Problem> Problems, IReadOnlyList<string> Cautions);
