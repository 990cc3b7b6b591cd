using System.ComponentModel;
using System.Globalization;
using SectionScan.Cli.Options;
using SectionScan.Jobs.TargetShapes;
using SectionScan.Porting.TargetShapes;
using SectionScan.Porting.Walls;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.TargetShapes;

/// <summary>What <c>sectionscan target-shape</c> is told.</summary>
internal sealed class TargetShapeSettings : AlignmentSettings
{
    private const double MostSharePercent = 200;
    private const double MostMm = 500;

    [CommandArgument(0, "<OWN>")]
    [Description("The port's own section, or a folder of them: section documents, an outline as CSV, or library:NUMBER")]
    public string Own { get; init; } = string.Empty;

    [CommandArgument(1, "<REFERENCE>")]
    [Description("The section worked toward, or a folder of them, named in the same way; stations find each other")]
    public string Reference { get; init; } = string.Empty;

    [CommandOption("--share <PERCENT>")]
    [Description("How far toward the reference all round: 0 stays at the own wall, 100 reaches the reference")]
    [DefaultValue(100.0)]
    public double Share { get; init; } = 100;

    [CommandOption("--share-at <SECTOR=PERCENT>")]
    [Description("Another share for a sector: floor, roof, left, right, sides, corners, roof-left-corner, ..., for example floor=0; may be repeated. It holds in the middle of the sector and goes over smoothly into its neighbours: a floor at 0 still loses metal toward its ends unless they are at 0 too")]
    public string[] ShareAt { get; init; } = [];

    [CommandOption("--area <MM2>")]
    [Description("Scale the reference so that the target has this area, mm²")]
    public double? Area { get; init; }

    [CommandOption("--width <MM>")]
    [Description("Scale the reference so that the target has this width, mm")]
    public double? Width { get; init; }

    [CommandOption("--valve <FROM,TO>")]
    [Description("Scale the reference by the ratio of two valve diameters, its own first, for example 38,40")]
    public string? Valve { get; init; }

    [CommandOption("--widen-guide <MM>")]
    [Description("Wider beside the valve guide by this much in all, mm (about 2 is usual; common practice)")]
    public double WidenGuide { get; init; }

    [CommandOption("--guide-at <Y>")]
    [Description("Height of the guide in the section, mm above its origin; else the marked guide axis, else where the section is widest")]
    public double? GuideAt { get; init; }

    [CommandOption("--limit <KIND=MOST[:NOTE]>")]
    [Description("The most that width, height (mm) or area (mm²) may be, with your reason, for example width=36:\"oil drain\"; may be repeated")]
    public string[] Limit { get; init; } = [];

    [CommandOption("--keep-out <X,Y,R,LEAST[:NOTE]>")]
    [Description("A round passage (centre and radius, mm, in the own section's frame) and the least wall to leave, mm; may be repeated")]
    public string[] KeepOut { get; init; } = [];

    [CommandOption("--keep-outs <FILE>")]
    [Description("The table of passages and wall readings (CSV) that walls and cut-plan take: the target keeps each one's limit, and twice u of its place more")]
    public string? KeepOuts { get; init; }

    [CommandOption("--fair <MM>")]
    [Description("Waves shorter than this are faired out of the wall, mm; 0 leaves it as it comes")]
    [DefaultValue(TargetShapeOrder.UsualFairingMm)]
    public double Fair { get; init; } = TargetShapeOrder.UsualFairingMm;

    /// <summary>What was chosen; only after <see cref="Validate"/>.</summary>
    public TargetShapeChoice Choice => new(Shares()!, Alignment)
    {
        Wanted = Area is { } area ? (LimitedMeasure.Area, area) : Width is { } width ? (LimitedMeasure.Width, width) : null,
        Valve = Valve is not null && NumberList.Read(Valve, ',', 2) is { } valve ? (valve[0], valve[1]) : null,
        WidenMm = WidenGuide,
        WidenAtYMm = GuideAt,
        Limits = [.. Limit.Select(ReadLimit).OfType<ShapeLimit>()],
        Clearances = [.. KeepOut.Select(ReadKeepOut).OfType<Clearance>()],
        FairingMm = Fair,
        Program = $"SectionScan {SectionScanApp.Version}",
        SettingsInWords = SettingsInWords(),
    };

    public override ValidationResult Validate()
    {
        var shared = base.Validate();
        if (!shared.Successful)
        {
            return shared;
        }

        var fault =
            Shares() is null ? $"--share and --share-at take 0 to {MostSharePercent:0} percent, for example --share-at floor=0; sectors are {string.Join(", ", SectorWords.Known)}."
            : Area is not null && Width is not null ? "--area and --width cannot be given together: the reference has one scale."
            : Valve is not null && (Area ?? Width) is not null ? "--valve cannot be given together with --area or --width: the reference has one scale."
            : Area is { } area && !(area is > 0 and < MostMm * MostMm) ? "--area is out of range: give mm²."
            : Width is { } width && !(width is > 0 and < MostMm) ? "--width is out of range: give millimetres."
            : Valve is not null && !(NumberList.Read(Valve, ',', 2) is { } d && d.All(one => one is > 0 and < MostMm) && d[1] / d[0] is > 0.5 and < 2)
                ? $"--valve {Valve} is not two diameters: give the reference's first, for example 38,40."
            : !(WidenGuide is >= 0 and <= 20) ? "--widen-guide is out of range: give millimetres from 0 to 20."
            : Limit.FirstOrDefault(one => ReadLimit(one) is null) is { } limit
                ? $"--limit {limit} is not known: give width=MM, height=MM or area=MM2, then a colon and your reason if you like."
            : KeepOut.FirstOrDefault(one => ReadKeepOut(one) is null) is { } keepOut
                ? $"--keep-out {keepOut} is not a circle and a distance: give X,Y,RADIUS,LEAST in mm, then a colon and what it is."
            : !(Fair is >= 0 and <= 40) ? "--fair is out of range: give millimetres from 0 to 40."
            : null;
        return fault is null ? ValidationResult.Success() : ValidationResult.Error(fault);
    }

    private SectorShares? Shares()
    {
        if (!IsShare(Share))
        {
            return null;
        }

        var shares = SectorShares.Even(Share / 100);
        foreach (var one in ShareAt)
        {
            var parts = one.Split('=');
            if (parts.Length != 2 || SectorWords.Read(parts[0]) is not { } sectors
                || !double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out var percent) || !IsShare(percent))
            {
                return null;
            }

            shares = sectors.Aggregate(shares, (all, sector) => all.With(sector, percent / 100));
        }

        return shares;
    }

    private static bool IsShare(double percent) => percent is >= 0 and <= MostSharePercent;

    private static ShapeLimit? ReadLimit(string text)
    {
        var (value, note) = Parted(text);
        var parts = value.Split('=');
        LimitedMeasure? kind = parts[0] switch
        {
            "width" => LimitedMeasure.Width,
            "height" => LimitedMeasure.Height,
            "area" => LimitedMeasure.Area,
            _ => null,
        };
        return kind is { } known && parts.Length == 2 && NumberList.Read(parts[1], ',', 1) is [> 0 and < MostMm * MostMm] most
            ? new(known, most[0], note) : null;
    }

    private static Clearance? ReadKeepOut(string text)
    {
        var (value, note) = Parted(text);
        return NumberList.Read(value, ',', 4) is { } n && n[2] >= 0 && n[3] >= 0
            ? new(note.Length > 0 ? note : "round passage", new KeepOutCircle(new(n[0], n[1]), n[2]), n[3], string.Empty) : null;
    }

    private static (string Value, string Note) Parted(string text)
    {
        var at = text.IndexOf(':', StringComparison.Ordinal);
        return at < 0 ? (text, string.Empty) : (text[..at], text[(at + 1)..].Trim());
    }

    private SortedDictionary<string, string> SettingsInWords()
    {
        var settings = new SortedDictionary<string, string>(StringComparer.Ordinal)
        {
            ["align"] = AlignWord,
            ["fit"] = Fit,
            ["share"] = Number(Share),
            ["fair"] = Number(Fair),
        };
        void Add(string name, string? value)
        {
            if (!string.IsNullOrEmpty(value))
            {
                settings[name] = value;
            }
        }

        Add("free", Free);
        Add("mirror", Mirror ? "yes" : null);
        Add("share-at", string.Join(" ", ShareAt));
        Add("area", Area is { } area ? Number(area) : null);
        Add("width", Width is { } width ? Number(width) : null);
        Add("valve", Valve);
        Add("widen-guide", WidenGuide > 0 ? Number(WidenGuide) : null);
        Add("guide-at", GuideAt is { } at ? Number(at) : null);
        Add("limit", string.Join("; ", Limit));
        Add("keep-out", string.Join("; ", KeepOut));
        Add("keep-outs", KeepOuts);
        return settings;
    }

    private static string Number(double value) => value.ToString(CultureInfo.InvariantCulture);
}
