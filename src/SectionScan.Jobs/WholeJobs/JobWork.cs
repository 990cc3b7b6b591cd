using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Cutting;
using SectionScan.Jobs.Proving;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Joints;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>The work that a job asks for besides measuring, as it came out.</summary>
/// <param name="Targets">The target shapes.</param>
/// <param name="Plans">The cuts planned, in the job's order.</param>
/// <param name="Proofs">The proofs.</param>
/// <param name="Joints">The joints matched.</param>
public sealed record JobWork(
    IReadOnlyList<SectionInput> Targets, IReadOnlyList<PlannedCut> Plans, IReadOnlyList<ProvedPort> Proofs, IReadOnlyList<MatchedJoint> Joints);

/// <summary>A cut planned for a port of a job.</summary>
/// <param name="Asked">What the job says.</param>
/// <param name="Plan">The plan.</param>
public sealed record PlannedCut(JobPlan Asked, CutPlan Plan);

/// <summary>A port of a job proved.</summary>
/// <param name="Asked">What the job says.</param>
/// <param name="Sections">The proved sections.</param>
/// <param name="Unproved">Why others are not proved.</param>
public sealed record ProvedPort(JobProof Asked, IReadOnlyList<ProvedSection> Sections, IReadOnlyList<Problem> Unproved);

/// <summary>A manifold matched to a port of a job.</summary>
/// <param name="Asked">What the job says.</param>
/// <param name="Match">The match.</param>
/// <param name="Photos">The photos that faces were measured on.</param>
public sealed record MatchedJoint(JobJoint Asked, JointMatch Match, IReadOnlyList<DigitisedPhoto> Photos);
