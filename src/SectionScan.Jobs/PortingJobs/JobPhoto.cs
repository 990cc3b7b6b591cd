using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>One photo of a job.</summary>
/// <param name="Id">Its name in the job: "photo-3"; never used for another, even after undo.</param>
/// <param name="File">The file's name within the job's folder: ours, never the sender's.</param>
/// <param name="GivenName">What it was called where it came from; only ever shown.</param>
/// <param name="WidthPx">Width as displayed, px.</param>
/// <param name="HeightPx">Height as displayed, px.</param>
/// <param name="QuarterTurns">Quarter turns clockwise from the stored to the displayed picture.</param>
public sealed record JobPhoto(string Id, string File, string GivenName, int WidthPx, int HeightPx, int QuarterTurns)
{
    /// <summary>The stage of the work that it shows: "exemplar", "as cast", "finished", or the person's own word.</summary>
    public string Stage { get; init; } = string.Empty;

    /// <summary>Thickness of its slices, mm; null while nobody told it. Does not matter to openings.</summary>
    public double? ThicknessMm { get; init; }

    /// <summary>Its scale when it shows no printed target, or null.</summary>
    public PickedScale? Scale { get; init; }

    /// <summary>Places on slices that were missed, px as displayed.</summary>
    public IReadOnlyList<PixelPoint> Seeds { get; init; } = [];

    /// <summary>How often it was digitised.</summary>
    public int Runs { get; init; }

    /// <summary>Why the last run gave nothing, or null.</summary>
    public Problem? Problem { get; init; }

    /// <summary>What the person should know of the last run.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>True once it was digitised, with or without success.</summary>
    public bool IsDigitised => Runs > 0;
}
