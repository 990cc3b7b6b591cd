using SectionScan.Porting.Documents;
using SectionScan.Porting.Engines;
using SectionScan.Porting.Ports;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>What a photo does not tell of a job's port: where its stations lie, and the engine it feeds.</summary>
public sealed record PortData
{
    /// <summary>Intake or exhaust.</summary>
    public PortKind Kind { get; init; } = PortKind.Intake;

    /// <summary>Where the stations lie; empty while nobody told it.</summary>
    public IReadOnlyList<JobStation> Stations { get; init; } = [];

    /// <summary>The station where the bowl begins, or null.</summary>
    public int? BowlFromStation { get; init; }

    /// <summary>The engine, or null.</summary>
    public EngineData? Engine { get; init; }

    /// <summary>The valve, or null.</summary>
    public ValveData? Valve { get; init; }

    /// <summary>Mean flow coefficient of the valve, or null.</summary>
    public double? MeanFlowCoefficient { get; init; }

    /// <summary>The port as a job document tells it.</summary>
    public JobPort PortNamed(string name) => new(name, Kind) { Stations = Stations };

    /// <summary>The port data of a job document: its engine and its first port.</summary>
    public static PortData From(JobDocument job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return job.Ports.Count == 0 ? new() { Engine = job.Engine } : new()
        {
            Kind = job.Ports[0].Kind,
            Stations = job.Ports[0].Stations,
            BowlFromStation = job.Ports[0].BowlFromStation,
            Engine = job.Engine,
            Valve = job.Ports[0].Valve,
            MeanFlowCoefficient = job.Ports[0].MeanFlowCoefficient,
        };
    }
}
