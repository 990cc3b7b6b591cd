using System.ComponentModel;
using SectionScan.Cli.Options;
using SectionScan.Drawings.Pages;
using SectionScan.Porting.Joints;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Joint;

/// <summary>What <c>sectionscan joint</c> is told.</summary>
internal sealed class JointSettings : OutputSettings
{
    private const double MostMm = 50;

    [CommandOption("--port <FILE>", isRequired: true)]
    [Description("The port face: a photo with the card, a section document, or an outline as DXF, SVG or CSV; again for each further document of the same photo")]
    public string[] Port { get; init; } = [];

    [CommandOption("--manifold <FILE>", isRequired: true)]
    [Description("The manifold's flange, named in the same way")]
    public string[] Manifold { get; init; } = [];

    [CommandOption("--gasket <FILE>")]
    [Description("The gasket's openings, named in the same way, seen like the port face")]
    public string[] Gasket { get; init; } = [];

    [CommandOption("--flow <FLOW>")]
    [Description("intake (manifold into port) or exhaust (port into manifold): decides which edges face the flow")]
    [DefaultValue("intake")]
    public string Flow { get; init; } = "intake";

    [CommandOption("--clearance <MM>")]
    [Description("The holes' diameter less the studs', in millimetres; with --port-studs and --manifold-studs")]
    public double? Clearance { get; init; }

    [CommandOption("--port-studs <X,Y,...>")]
    [Description("Middles of the port's studs in mm from the card's top-left corner, y down (in a drawing's own frame for DXF, SVG and CSV)")]
    public PlacesOption? PortStuds { get; init; }

    [CommandOption("--manifold-studs <X,Y,...>")]
    [Description("Middles of the manifold's holes in the same order")]
    public PlacesOption? ManifoldStuds { get; init; }

    [CommandOption("--gasket-studs <X,Y,...>")]
    [Description("Middles of the gasket's holes in the same order; without them it is laid by its openings")]
    public PlacesOption? GasketStuds { get; init; }

    [CommandOption("--shift <MM>")]
    [Description("The farthest that the manifold can be shifted from its start")]
    public double? Shift { get; init; }

    [CommandOption("--turn <DEG>")]
    [Description("The farthest that the manifold can be turned from its start, either way")]
    public double? Turn { get; init; }

    [CommandOption("--pivot <X,Y,X,Y>")]
    [Description("A place of the port and one of the manifold that stay together, such as a dowel: then only the turn is free")]
    public PlacesOption? Pivot { get; init; }

    [CommandOption("--allow <MM>")]
    [Description("A step up to this is left alone; a step within its uncertainty always is")]
    [DefaultValue(0.0)]
    public double Allow { get; init; }

    [CommandOption("--port-seen <HOW>")]
    [Description("front (looking at the face) or with-flow; else openings are taken as seen from the front, slices with the flow")]
    public string? PortSeen { get; init; }

    [CommandOption("--manifold-seen <HOW>")]
    [Description("The same for the manifold")]
    public string? ManifoldSeen { get; init; }

    [CommandOption("--lens <FILE>")]
    [Description("The camera's lens profile for photos, made by sectionscan lens")]
    public string? Lens { get; init; }

    [CommandOption("--print-ratio <X,Y>")]
    [Description("Measured over nominal length of the card's edges in photos, across and up, for example 0.998,1.001")]
    public PrintRatioOption? PrintRatio { get; init; }

    [CommandOption("--out <DIR>")]
    [Description("Folder for the picture, the two-sided template (PDF, SVG, DXF) and the steps (CSV)")]
    public string? Out { get; init; }

    [CommandOption("--paper <SIZE>")]
    [Description("The template's paper: a4, a3 or letter")]
    [DefaultValue("a4")]
    public string Paper { get; init; } = "a4";

    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what is shown")]
    public UnitOption Units { get; init; }

    public JointFlow FlowChosen => Flow == "exhaust" ? JointFlow.Exhaust : JointFlow.Intake;

    public static FaceView ViewOf(string? seen) => seen switch
    {
        "front" => FaceView.Front,
        "with-flow" => FaceView.WithFlow,
        _ => FaceView.AsUsual,
    };

    public override ValidationResult Validate()
    {
        if (Flow is not ("intake" or "exhaust"))
        {
            return ValidationResult.Error($"--flow {Flow} is not known: give intake or exhaust.");
        }

        if (new[] { PortSeen, ManifoldSeen }.FirstOrDefault(seen => seen is not (null or "front" or "with-flow")) is { } odd)
        {
            return ValidationResult.Error($"'{odd}' is no way to see a face: give front or with-flow.");
        }

        foreach (var (name, value, most) in new[] { ("--clearance", Clearance, MostMm), ("--shift", Shift, MostMm), ("--turn", Turn, 180), ("--allow", Allow, MostMm) })
        {
            if (value is { } number && !(number >= 0 && number <= most))
            {
                return ValidationResult.Error(FormattableString.Invariant($"{name} {number} is out of range: give a number from 0 to {most}."));
            }
        }

        if (Pivot is { Places.Count: not 2 })
        {
            return ValidationResult.Error("--pivot takes two places: x,y on the port, then x,y on the manifold.");
        }

        if (Pivot is not null && (Clearance is not null || PortStuds is not null))
        {
            return ValidationResult.Error("--pivot and studs cannot be given together: a joint either turns about a pivot or plays round its studs.");
        }

        if (Clearance is null != (PortStuds is null) || Clearance is null != (ManifoldStuds is null))
        {
            return ValidationResult.Error("--clearance, --port-studs and --manifold-studs belong together.");
        }

        return PaperSize.FromName(Paper) is null
            ? ValidationResult.Error($"--paper {Paper} is not known: give {string.Join(", ", PaperSize.All.Select(size => size.Name))}.")
            : ValidationResult.Success();
    }
}
