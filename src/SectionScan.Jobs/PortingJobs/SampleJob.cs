using SectionScan.Jobs.Demo;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>A job on the sample photographs, ready to be digitised: what goes into it.</summary>
public static class SampleJob
{
    /// <summary>The job before its photos.</summary>
    public static PortingJob Begun { get; } = new()
    {
        Name = "Sample: Bramble 480 twin",
        Head = DemoScenario.Head,
        CheckBarAcrossMm = CheckBars.AcrossMm * DemoScenario.PrintRatio.X,
        CheckBarUpMm = CheckBars.UpMm * DemoScenario.PrintRatio.Y,
        PortData = DemoScenario.PortData,
    };

    /// <summary>Its photos.</summary>
    public static IReadOnlyList<SamplePhoto> Photos { get; } =
        [.. DemoScenario.Ports.SelectMany(port => port.Photos.Select(name => new SamplePhoto(name, port.Stage, port.ThicknessMm)))];

    /// <summary>The photos that its lens is learnt from.</summary>
    public static IReadOnlyList<string> LensPhotos => DemoScenario.LensPhotos;

    /// <summary>One photo.</summary>
    /// <param name="File">Its name in the folder of the sample photographs.</param>
    /// <param name="Stage">The stage that it shows.</param>
    /// <param name="ThicknessMm">Thickness of its slices, mm; null for a sawn face.</param>
    public sealed record SamplePhoto(string File, string Stage, double? ThicknessMm);
}
