using SectionScan.Porting.Engines;
using SectionScan.Porting.Ports;

namespace SectionScan.Porting.Documents;

/// <summary>A job: all that belongs together of one head, as a person writes it. Running it again from the photos gives the same
/// results. File names are relative to the document's own folder and stay inside it.</summary>
/// <param name="Schema">The schema's name.</param>
/// <param name="Head">The head worked on.</param>
/// <param name="Name">The job's name; names the report.</param>
/// <param name="Ports">The ports, that which the job is about first.</param>
public sealed record JobDocument(string Schema, string Head, string Name, IReadOnlyList<JobPort> Ports)
{
    /// <summary>The schema's name, stored inside each document.</summary>
    public const string SchemaName = "sectionscan/job/1";

    /// <summary>The day of the work, as 2026-11-26; stands on the report's cover. Never taken from a clock.</summary>
    public string? Date { get; init; }

    /// <summary>Who did the work; may be left out.</summary>
    public string? Shop { get; init; }

    /// <summary>What the reader of the report must know first.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Where the lens profile comes from; null learns the lens from each photo.</summary>
    public JobLens? Lens { get; init; }

    /// <summary>Measured over nominal length of the target's check bars, across and up; null when nobody checked the print.</summary>
    public IReadOnlyList<double>? PrintRatio { get; init; }

    /// <summary>The engine; null leaves the gas speeds out.</summary>
    public EngineData? Engine { get; init; }

    /// <summary>Which port is compared with which.</summary>
    public IReadOnlyList<JobComparison> Comparisons { get; init; } = [];

    /// <summary>Documents of target shapes, one a station.</summary>
    public IReadOnlyList<string> Targets { get; init; } = [];

    /// <summary>Cuts to be planned.</summary>
    public IReadOnlyList<JobPlan> Plans { get; init; } = [];

    /// <summary>Finished ports to be proved.</summary>
    public IReadOnlyList<JobProof> Proofs { get; init; } = [];

    /// <summary>Manifolds, carburettors or pipes to be matched to ports.</summary>
    public IReadOnlyList<JobJoint> Joints { get; init; } = [];

    /// <summary>Every file that the job names, each once.</summary>
    public IReadOnlyList<string> Files() =>
    [
        .. (Lens?.Photos ?? []).Append(Lens?.Profile)
            .Concat(Ports.SelectMany(port => port.Photos.Concat(port.Sections).Append(port.StationTable)))
            .Concat(Targets).Concat(Plans.Select(plan => plan.KeepOuts)).Concat(Joints.SelectMany(joint => joint.Manifold.Concat(joint.PortFace).Concat(joint.Gasket))).OfType<string>().Distinct(),
    ];
}

/// <summary>Where a lens profile comes from: a file, or photos of the bare sheet. One of the two.</summary>
public sealed record JobLens
{
    /// <summary>A lens profile's file.</summary>
    public string? Profile { get; init; }

    /// <summary>Photos of the bare sheet.</summary>
    public IReadOnlyList<string> Photos { get; init; } = [];
}

/// <summary>One port of a job.</summary>
/// <param name="Name">Its name within the job.</param>
/// <param name="Kind">Intake or exhaust.</param>
public sealed record JobPort(string Name, PortKind Kind)
{
    /// <summary>The stage of the work: "as cast", "finished"; may be left out.</summary>
    public string? Stage { get; init; }

    /// <summary>Photos of its slices or openings.</summary>
    public IReadOnlyList<string> Photos { get; init; } = [];

    /// <summary>Section documents that stand beside or instead of photos.</summary>
    public IReadOnlyList<string> Sections { get; init; } = [];

    /// <summary>Thickness of its slices, mm; null for openings.</summary>
    public double? ThicknessMm { get; init; }

    /// <summary>How much the mould has shrunk, percent of length; null leaves its slices as they are.</summary>
    public double? ShrinkagePercent { get; init; }

    /// <summary>The stations written in the job itself.</summary>
    public IReadOnlyList<JobStation> Stations { get; init; } = [];

    /// <summary>A station table's file instead.</summary>
    public string? StationTable { get; init; }

    /// <summary>The station where the bowl begins.</summary>
    public int? BowlFromStation { get; init; }

    /// <summary>The whole length along the centreline from the port's face to the seat, mm, counted from distance 0.</summary>
    public double? LengthMm { get; init; }

    /// <summary>The volume that a burette filled between face and seat.</summary>
    public JobVolume? Burette { get; init; }

    /// <summary>The valve at its end.</summary>
    public ValveData? Valve { get; init; }

    /// <summary>Mean flow coefficient of the inlet valve over the lift, for Taylor's inlet Mach index.</summary>
    public double? MeanFlowCoefficient { get; init; }

    /// <summary>Figures of a flow bench.</summary>
    public IReadOnlyList<JobFlow> Flow { get; init; } = [];
}

/// <summary>A station of a port in a job.</summary>
/// <param name="Station">The station's number.</param>
/// <param name="DistanceMm">Distance along the centreline, mm.</param>
public sealed record JobStation(int Station, double DistanceMm)
{
    /// <summary>How far the cut plane leans from square, degrees.</summary>
    public double TiltDeg { get; init; }

    /// <summary>How far the centreline has turned since the first station, degrees.</summary>
    public double TurnDeg { get; init; }

    /// <summary>Standard uncertainty of the distance, mm.</summary>
    public double UMm { get; init; } = StationPosition.AssumedStandardUncertaintyMm;
}

/// <summary>A volume measured by filling.</summary>
/// <param name="VolumeCm3">The volume, cm³.</param>
public sealed record JobVolume(double VolumeCm3)
{
    /// <summary>Standard uncertainty, cm³: a burette read twice and a meniscus at the plate (common practice, no source).</summary>
    public double UCm3 { get; init; } = 0.3;
}

/// <summary>One figure of a flow bench.</summary>
/// <param name="FlowCfm">Flow, cubic feet a minute.</param>
/// <param name="TestPressureInH2O">Test pressure, inches of water.</param>
public sealed record JobFlow(double FlowCfm, double TestPressureInH2O)
{
    /// <summary>Valve lift, mm; null when not told.</summary>
    public double? LiftMm { get; init; }
}
