using SectionScan.Jobs.TargetShapes;
using SectionScan.Metrology.Comparison;
using SectionScan.Porting.TargetShapes;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>What a job's target shapes are made of; the same for every station.</summary>
public sealed record TargetSettings
{
    /// <summary>The most that a sector may go toward the reference, percent.</summary>
    public const double MostSharePercent = 200;

    /// <summary>The most that waves are faired over, mm.</summary>
    public const double MostFairingMm = 40;

    /// <summary>The most that is widened beside the guide, mm.</summary>
    public const double MostWideningMm = 20;

    /// <summary>The port worked on, by its key; null while nothing is chosen.</summary>
    public string? Own { get; init; }

    /// <summary>The port worked toward, by its key; null while nothing is chosen.</summary>
    public string? Reference { get; init; }

    /// <summary>How far toward the reference, percent, in the order of <see cref="OutlineRegion"/>, eight.</summary>
    public IReadOnlyList<double> SharesPercent { get; init; } = [100, 100, 100, 100, 100, 100, 100, 100];

    /// <summary>How the reference is laid on the own section.</summary>
    public AlignmentMethod Alignment { get; init; } = AlignmentMethod.BestFitWithRotation;

    /// <summary>True to exchange left and right of the reference first.</summary>
    public bool IsMirrored { get; init; }

    /// <summary>Wider beside the guide by this, mm.</summary>
    public double WidenMm { get; init; }

    /// <summary>Waves shorter than this are faired out, mm.</summary>
    public double FairingMm { get; init; } = TargetShapeOrder.UsualFairingMm;

    /// <summary>Limits of width, height and area.</summary>
    public IReadOnlyList<ShapeLimit> Limits { get; init; } = [];

    /// <summary>True when both ports are chosen.</summary>
    public bool IsChosen => Own is not null && Reference is not null;

    /// <summary>The same with another share in one sector.</summary>
    public TargetSettings With(OutlineRegion region, double percent)
    {
        var shares = SharesPercent.ToArray();
        shares[(int)region] = percent;
        return this with { SharesPercent = shares };
    }

    /// <summary>The same with another limit of a measure, or without one.</summary>
    public TargetSettings With(LimitedMeasure kind, double? most, string note) => this with
    {
        Limits = [.. Limits.Where(each => each.Kind != kind), .. most is { } value ? new[] { new ShapeLimit(kind, value, note) } : []],
    };

    /// <summary>The choice that the target shape command makes of the same settings.</summary>
    /// <param name="walls">What lies behind the walls.</param>
    /// <param name="program">Name and version of the program.</param>
    public TargetShapeChoice Choice(PortWalls walls, string program) =>
        new(new([.. SharesPercent.Select(percent => percent / 100)]), AlignmentChoice.Of(Alignment, IsMirrored))
        {
            WidenMm = WidenMm,
            Limits = Limits,
            Walls = walls,
            FairingMm = FairingMm,
            Program = program,
            SettingsInWords = InWords(),
        };

    private SortedDictionary<string, string> InWords() => new(StringComparer.Ordinal)
    {
        ["align"] = AlignmentWords(),
        ["share"] = string.Join(", ", SharesPercent.Select((percent, i) => FormattableString.Invariant($"{RegionWords.Of((OutlineRegion)i)} {percent:0.#}"))),
        ["fair"] = FormattableString.Invariant($"{FairingMm}"),
    };

    private string AlignmentWords() => Comparing.AlignmentWords.Of(AlignmentChoice.Of(Alignment, IsMirrored));
}
