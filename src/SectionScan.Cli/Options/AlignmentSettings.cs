using System.ComponentModel;
using SectionScan.Metrology.Comparison;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Options;

/// <summary>How one section is laid on another: options that all commands share that put two sections together.</summary>
public class AlignmentSettings : OutputSettings
{
    private static readonly Dictionary<string, SectionAlignmentMethod> Methods = new(StringComparer.Ordinal)
    {
        ["as-placed"] = SectionAlignmentMethod.AsPlaced,
        ["centroids"] = SectionAlignmentMethod.Centroids,
        ["best-fit"] = SectionAlignmentMethod.BestFit,
        ["best-fit-turned"] = SectionAlignmentMethod.BestFit,
        ["guide-axis"] = SectionAlignmentMethod.GuideAxis,
        ["floor-line"] = SectionAlignmentMethod.FloorLine,
        ["points"] = SectionAlignmentMethod.Points,
    };

    private static readonly Dictionary<string, FitLoss> Losses = new(StringComparer.Ordinal)
    {
        ["least-squares"] = FitLoss.LeastSquares,
        ["absolute"] = FitLoss.Absolute,
        ["huber"] = FitLoss.Huber,
        ["tukey"] = FitLoss.Tukey,
    };

    private static readonly Dictionary<string, AlignmentFreedom> Freedoms = new(StringComparer.Ordinal)
    {
        ["x"] = AlignmentFreedom.X,
        ["y"] = AlignmentFreedom.Y,
        ["rotation"] = AlignmentFreedom.Rotation,
        ["scale"] = AlignmentFreedom.Scale,
        ["none"] = AlignmentFreedom.None,
    };

    /// <summary>By what the sections are laid on each other; null for the command's usual.</summary>
    [CommandOption("--align <HOW>")]
    [Description("as-placed, centroids, best-fit (moved), best-fit-turned (moved and turned), guide-axis, floor-line or points (as marked)")]
    public string? Align { get; init; }

    /// <summary>What a best fit may change, as given.</summary>
    [CommandOption("--free <WHAT>")]
    [Description("What a best fit may change, the rest stays fixed: any of x, y, rotation, scale with commas between, for example x,rotation")]
    public string? Free { get; init; }

    /// <summary>How distances count in a best fit, as given.</summary>
    [CommandOption("--fit <LOSS>")]
    [Description("How distances count: tukey (usual: a local over-cut keeps its depth), huber, absolute or least-squares")]
    [DefaultValue("tukey")]
    public string Fit { get; init; } = "tukey";

    /// <summary>True when no even offset is fitted.</summary>
    [CommandOption("--no-even-offset")]
    [Description("Do not allow for one port being larger all round by an even amount when fitting")]
    public bool HasNoEvenOffset { get; init; }

    /// <summary>True when the second section is mirrored first.</summary>
    [CommandOption("--mirror")]
    [Description("Mirror the second section about its guide axis first (its upright axis where none is marked): a left port on a right one")]
    public bool Mirror { get; init; }

    /// <summary>The library's file.</summary>
    [CommandOption("--library <FILE>")]
    [Description("The library's file")]
    public string? Library { get; init; }

    /// <summary>Where results go.</summary>
    [CommandOption("--out <DIR>")]
    [Description("Folder for drawings, tables and documents; nothing is written without it")]
    public string? Out { get; init; }

    /// <summary>What is shown.</summary>
    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what is shown; options and documents are always in millimetres")]
    public UnitOption Units { get; init; }

    /// <summary>The alignment when none is asked for.</summary>
    protected virtual string UsualAlign => "best-fit-turned";

    /// <summary>The alignment's word, given or usual.</summary>
    public string AlignWord => Align ?? UsualAlign;

    /// <summary>The alignment chosen.</summary>
    public AlignmentChoice Alignment
    {
        get
        {
            var free = AlignmentFreedom.X | AlignmentFreedom.Y | (AlignWord == "best-fit-turned" ? AlignmentFreedom.Rotation : AlignmentFreedom.None);
            if (Free is not null)
            {
                free = Free.Split(',').Aggregate(AlignmentFreedom.None, (all, one) => all | Freedoms[one.Trim()]);
            }

            var loss = Losses[Fit];
            var hasOffset = loss != FitLoss.LeastSquares && !free.HasFlag(AlignmentFreedom.Scale) && !HasNoEvenOffset;
            return new(Methods[AlignWord], new(free, loss, hasOffset), Mirror);
        }
    }

    /// <inheritdoc/>
    public override ValidationResult Validate() =>
        Align is not null && !Methods.ContainsKey(Align) ? ValidationResult.Error($"--align {Align} is not known: give {Words(Methods.Keys)}.")
        : !Losses.ContainsKey(Fit) ? ValidationResult.Error($"--fit {Fit} is not known: give {Words(Losses.Keys)}.")
        : Free is not null && !Free.Split(',').All(one => Freedoms.ContainsKey(one.Trim()))
            ? ValidationResult.Error($"--free {Free} is not known: give any of x, y, rotation, scale with commas between, or none.")
        : Free is not null && Methods[AlignWord] != SectionAlignmentMethod.BestFit
            ? ValidationResult.Error($"--free belongs to a best fit; --align {AlignWord} decides by itself what moves.")
        : ValidationResult.Success();

    private static string Words(IEnumerable<string> words)
    {
        var all = words.ToList();
        return string.Join(", ", all[..^1]) + " or " + all[^1];
    }
}
