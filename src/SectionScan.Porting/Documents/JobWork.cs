using SectionScan.Porting.Templates;

namespace SectionScan.Porting.Documents;

/// <summary>A cut to be planned: from a port of the job toward another, or toward the job's targets.</summary>
/// <param name="Port">The port to cut.</param>
/// <param name="Toward">The name of the port it is to become, or <see cref="Targets"/>.</param>
public sealed record JobPlan(string Port, string Toward)
{
    /// <summary>Stands for the job's target documents in place of a port's name.</summary>
    public const string Targets = "targets";

    /// <summary>What roughing leaves for finishing, mm.</summary>
    public double AllowanceMm { get; init; } = SectionTemplate.UsualAllowanceMm;

    /// <summary>A table of what lies behind the walls; null when nothing is known.</summary>
    public string? KeepOuts { get; init; }
}

/// <summary>A finished port to be proved against another port of the job or the job's targets.</summary>
/// <param name="Port">The finished port.</param>
/// <param name="Against">The name of the port it should be, or <see cref="JobPlan.Targets"/>.</param>
public sealed record JobProof(string Port, string Against)
{
    /// <summary>How far inside the wall may lie (metal left), mm.</summary>
    public double InsideMm { get; init; } = 0.2;

    /// <summary>How far outside the wall may lie (metal gone), mm.</summary>
    public double OutsideMm { get; init; } = 0.2;
}
