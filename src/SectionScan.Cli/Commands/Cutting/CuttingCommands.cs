using SectionScan.Cli.Commands.Template;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Cutting;

/// <summary>The commands from a target shape to metal: walls, plan, templates.</summary>
internal static class CuttingCommands
{
    public static void Add(IConfigurator commands)
    {
        commands.AddCommand<WallsCommand>("walls")
            .WithDescription("Shows the walls left between a port and passages behind it, and the chance that they are too thin.")
            .WithExample("walls", "own.station-3.section.json", "--target", "target.station-3.section.json", "--keep-outs", "walls.csv");
        commands.AddCommand<CutPlanCommand>("cut-plan")
            .WithDescription("Plans the cut: how deep where now and at finish, where nothing may be removed, in which order.")
            .WithExample("cut-plan", "own.station-3.section.json", "target.station-3.section.json", "--keep-outs", "walls.csv")
            .WithExample("cut-plan", "as-cast", "targets", "--spacing", "12", "--port", "\"intake 2\"", "--out", "plan");
        commands.AddCommand<TemplateCommand>("template")
            .WithDescription("Makes templates at actual size to cut out: plugs for the port, plates for the mould, as PDF, SVG and DXF.")
            .WithExample("template", "target.station-3.section.json", "target.station-4.section.json", "--port", "\"intake 2\"", "--out", "templates")
            .WithExample("template", "library:4", "--kind", "both", "--stage", "finish", "--paper", "letter", "--print-ratio", "0.998,1.001");
    }
}
