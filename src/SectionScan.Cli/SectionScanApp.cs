using System.Globalization;
using SectionScan.Cli.Commands;
using SectionScan.Cli.Commands.Check;
using SectionScan.Cli.Commands.Compare;
using SectionScan.Cli.Commands.Cutting;
using SectionScan.Cli.Commands.Demo;
using SectionScan.Cli.Commands.Digitise;
using SectionScan.Cli.Commands.Drift;
using SectionScan.Cli.Commands.Gauge;
using SectionScan.Cli.Commands.Joint;
using SectionScan.Cli.Commands.Lengthwise;
using SectionScan.Cli.Commands.Lens;
using SectionScan.Cli.Commands.Library;
using SectionScan.Cli.Commands.Loft;
using SectionScan.Cli.Commands.Mark;
using SectionScan.Cli.Commands.Open;
using SectionScan.Cli.Commands.Outlines;
using SectionScan.Cli.Commands.Port;
using SectionScan.Cli.Commands.Prove;
using SectionScan.Cli.Commands.Spread;
using SectionScan.Cli.Commands.Target;
using SectionScan.Cli.Commands.TargetShapes;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using Spectre.Console.Cli;

namespace SectionScan.Cli;

/// <summary>The command line program: its commands, and what becomes of every way a command can end.</summary>
/// <remarks>Commands get a <see cref="Terminal"/>, a <see cref="ProblemPrinter"/>, a <see cref="JsonOutput"/> and a
/// <see cref="ProgressReport"/> through their constructors and return an <see cref="ExitCode"/>.</remarks>
public static class SectionScanApp
{
    /// <summary>The name that the program is called by.</summary>
    public const string Name = "sectionscan";

    /// <summary>The program's version, as <c>--version</c> shows it.</summary>
    public static string Version { get; } = typeof(SectionScanApp).Assembly.GetName().Version!.ToString(3);

    /// <summary>Runs the program in this process: its own streams, its own Ctrl-C.</summary>
    /// <param name="arguments">The command line without the program's name.</param>
    /// <returns>An <see cref="ExitCode"/>.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> arguments)
    {
        using var stop = new CancellationTokenSource();
        ConsoleCancelEventHandler onCancel = (_, pressed) =>
        {
            // The first Ctrl-C lets the command tidy up; the second ends the process at once.
            pressed.Cancel = !stop.IsCancellationRequested;
            stop.Cancel();
        };
        Console.CancelKeyPress += onCancel;
        try
        {
            return await RunAsync(arguments, Terminal.ForProcess(), stop.Token);
        }
        finally
        {
            Console.CancelKeyPress -= onCancel;
        }
    }

    /// <summary>Runs the program on given streams, as tests and embedders do.</summary>
    /// <param name="arguments">The command line without the program's name.</param>
    /// <param name="terminal">Where answers and messages go.</param>
    /// <param name="stop">Ends the running command; the exit code is then <see cref="ExitCode.Stopped"/>.</param>
    /// <returns>An <see cref="ExitCode"/>.</returns>
    public static Task<int> RunAsync(IReadOnlyList<string> arguments, Terminal terminal, CancellationToken stop = default) =>
        RunAsync(arguments, terminal, AddCommands, stop);

    internal static async Task<int> RunAsync(
        IReadOnlyList<string> arguments, Terminal terminal, Action<IConfigurator> addCommands, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        ArgumentNullException.ThrowIfNull(terminal);

        var printer = new ProblemPrinter(terminal);
        if (LeftoverArguments.FindBeforeCommand(arguments) is { } stray)
        {
            printer.Print(stray);
            return ExitCode.WrongUsage;
        }

        var app = new CommandApp();
        app.Configure(configuration =>
        {
            configuration.SetApplicationName(Name);
            configuration.SetApplicationVersion(Version);
            configuration.SetApplicationCulture(CultureInfo.InvariantCulture);
            configuration.ConfigureConsole(terminal.Help);
            // Not strict parsing: that fills an option that lacks its value with a word of the library's own, and the command runs.
            configuration.SetInterceptor(new LeftoverArguments(arguments));
            configuration.Settings.TrimTrailingPeriod = false;
            configuration.Settings.Registrar.RegisterInstance(terminal);
            configuration.Settings.Registrar.RegisterInstance(printer);
            configuration.Settings.Registrar.RegisterInstance(new JsonOutput(terminal));
            configuration.Settings.Registrar.RegisterInstance(new ProgressReport(terminal));
            configuration.SetExceptionHandler((exception, resolver) => Explain(exception, resolver, arguments, printer));
            addCommands(configuration);
        });

        var code = await app.RunAsync(arguments, stop);
        // The library's own answer to `sectionscan library` without one of that command's subcommands: help, and 1.
        return code == 1 ? ExitCode.WrongUsage : code;
    }

    internal static void AddCommands(IConfigurator commands)
    {
        commands.AddCommand<LensCommand>("lens")
            .WithDescription("Makes a lens profile from photos of the bare sheet, once for each camera and zoom.")
            .WithExample("lens", "sample-images/c01.jpg", "sample-images/c02.jpg", "sample-images/c03.jpg", "sample-images/c05.jpg", "--out", "phone.lens.json")
            .WithExample("lens", "board-1.png", "board-2.png", "board-3.png", "board-4.png", "--checkerboard", "15", "--out", "camera.lens.json");
        commands.AddCommand<DigitiseCommand>("digitise")
            .WithDescription("Turns photos of slices or sawn ports into true-size outlines with stated uncertainty.")
            .WithExample("digitise", "sample-images/p01.jpg", "--thickness", "6", "--out", "results")
            .WithExample("digitise", "sample-images/p08.jpg", "--subject", "opening", "--json")
            .WithExample("digitise", "coins.png", "--checkerboard", "15", "--pose-from", "board.png", "--thickness", "2", "--lens", "camera.lens.json")
            .WithExample("digitise", "slice.jpg", "--points", "210,1480,3350,1492,200", "--thickness", "6")
            .WithExample("digitise", "slice.jpg", "--rectangle", "300,210,3700,240,3690,2650,280,2600", "--size", "297x210", "--thickness", "6")
            .WithExample("digitise", "gasket-scan.png", "--scan")
            .WithExample("digitise", "slice.jpg", "--thickness", "6", "--lens", "phone.lens.json", "--print-ratio", "1,1", "--gauge", "shop.gauge.json");
        commands.AddCommand<GaugeCommand>("gauge")
            .WithDescription("Learns from photos of plugs of known size how well this camera, sheet and person measure.")
            .WithExample("gauge", "study.csv", "--out", "shop.gauge.json", "--lens", "phone.lens.json", "--print-ratio", "1,1")
            .WithExample("gauge", "study.csv", "--out", "shop.gauge.json", "--units", "in");
        commands.AddCommand<DemoCommand>("demo")
            .WithDescription("Runs the whole job on the sample photographs and makes one page to open.")
            .WithExample("demo")
            .WithExample("demo", "--out", "results");
        commands.AddCommand<OpenCommand>("open")
            .WithDescription("Opens the workbench: the whole job as pages in your own browser, on this machine alone.")
            .WithExample("open")
            .WithExample("open", "--folder", "jobs", "--library", "shop.db", "--port", "5480", "--no-browser");
        commands.AddCommand<CheckCommand>("check")
            .WithDescription("Looks at photos before they are measured: target, sharpness, light, tilt, height; what to do better.")
            .WithExample("check", "sample-images/p01.jpg", "--thickness", "6")
            .WithExample("check", "sample-images/p08.jpg", "--json");
        commands.AddCommand<TargetCommand>("target")
            .WithDescription("Writes a scale target to print: the sheet, the card or station tags, as PDF and SVG at true size.")
            .WithExample("target", "sheet", "--paper", "a4", "--out", "targets");
        commands.AddCommand<CompareCommand>("compare")
            .WithDescription("Compares a section with a reference: where metal is gone, where it is left, and how much.")
            .WithExample("compare", "exemplar.station-4.section.json", "finished.station-4.section.json", "--align", "best-fit-turned", "--out", "results")
            .WithExample("compare", "exemplar.station-4.section.json", "finished.station-4.section.json", "--shift", "0.4,0.2", "--turn", "1.5", "--out", "results")
            .WithExample("compare", "library:4", "finished.station-4.section.json", "--json")
            .WithExample("compare", "own.station-4.section.json", "own.station-4.section.json", "--mirror", "--align", "guide-axis");
        commands.AddCommand<JointCommand>("joint")
            .WithDescription("Matches a manifold to a port: the best place, the step round the joint, what to cut so that no edge faces the flow.")
            .WithExample("joint", "--port", "p01.station-1.section.json", "--manifold", "p10.opening-1.section.json", "--out", "results")
            .WithExample("joint", "--port", "head.jpg", "--manifold", "sample-images/p10.jpg", "--port-studs", "\"-8,-34,94,-34\"", "--manifold-studs", "\"-8,-34,94,-33.5\"", "--clearance", "0.6")
            .WithExample("joint", "--port", "head.jpg", "--manifold", "pipe.jpg", "--gasket", "gasket.csv", "--flow", "exhaust", "--shift", "0.5", "--turn", "1", "--json");
        commands.AddCommand<ImportOutlineCommand>("import-outline")
            .WithDescription("Makes section documents of outlines that another program drew: DXF, SVG or CSV.")
            .WithExample("import-outline", "port-entry.dxf", "--station", "1", "--edge-u", "0.05", "--out", "sections")
            .WithExample("import-outline", "gasket.svg", "--layer", "port", "--file-units", "in");
        commands.AddCommand<ExportOutlineCommand>("export-outline")
            .WithDescription("Writes bare outlines at true size for drawing programs, cutters and spreadsheets.")
            .WithExample("export-outline", "p01.station-1.section.json", "library:4", "--as", "dxf,svg", "--units", "in", "--out", "outlines");
        CuttingCommands.Add(commands);
        commands.AddCommand<SpreadCommand>("spread")
            .WithDescription("Compares many ports with each other: how far areas and walls lie apart at each station.")
            .WithExample("spread", "cylinder-1", "cylinder-2", "cylinder-3", "cylinder-4")
            .WithExample("spread", "left=port-left", "right=port-right", "--align", "best-fit", "--json");
        commands.AddCommand<DriftCommand>("drift")
            .WithDescription("Follows a port over the stages of the job: how far each wall has moved since the first and the last.")
            .WithExample("drift", "cast=as-cast", "roughed=roughed", "finished=finished");
        commands.AddCommand<MarkCommand>("mark")
            .WithDescription("Marks the guide axis, the floor line or points in a section document, to lay sections on each other by.")
            .WithExample("mark", "p04.station-4.section.json", "--guide-axis", "0.5,-10,0.3,15", "--point", "\"parting line=-15.2,3.1\"");
        commands.AddCommand<TargetShapeCommand>("target-shape")
            .WithDescription("Settles the shape to work toward, between the own port and a reference, within your limits.")
            .WithExample("target-shape", "as-cast", "exemplar", "--share", "75", "--share-at", "floor=0", "--out", "target")
            .WithExample("target-shape", "as-cast/p04.station-4.section.json", "library:4", "--limit", "width=36:\"oil drain\"", "--json");
        commands.AddCommand<ProveCommand>("prove")
            .WithDescription("Proves the finished port against its target: conforms, does not conform or undecided, with the uncertainty counted.")
            .WithExample("prove", "target", "finished", "--tolerance", "0.5", "--out", "proof")
            .WithExample("prove", "exemplar", "finished", "--inside", "0.6", "--outside", "0.1", "--tolerance-at", "floor=0.3,0", "--json");
        PortCommands.Add(commands);
        commands.AddCommand<LengthwiseCommand>("lengthwise")
            .WithDescription("Reads a mould half or casting cut lengthwise: floor and roof, centreline, height along it, the radius of the floor's turn.")
            .WithExample("lengthwise", "sample-images/p09.jpg", "--thickness", "14", "--out", "results")
            .WithExample("lengthwise", "finished.jpg", "--thickness", "14", "--reference", "exemplar.jpg", "--align", "seat", "--json");
        commands.AddCommand<LoftCommand>("loft")
            .WithDescription("Makes the solid of a port between its stations, for viewing, milling or printing a mould: STL, OBJ and glTF.")
            .WithExample("loft", "exemplar/p01.station-1.section.json", "exemplar/p01.station-2.section.json", "--stations", "stations.csv", "--name", "exemplar", "--out", "results");
        LibraryCommands.Add(commands);
        commands.AddCommand<VersionCommand>("version")
            .WithDescription("Shows the versions of SectionScan and of what it runs on, for a report or a lab book.")
            .WithExample("version")
            .WithExample("version", "--json");
    }

    private static int Explain(Exception exception, ITypeResolver? resolver, IReadOnlyList<string> arguments, ProblemPrinter printer)
    {
        switch (exception)
        {
            case OperationCanceledException:
                printer.PrintStopped();
                return ExitCode.Stopped;
            case UsageException usage:
                printer.Print(usage.Usage);
                return ExitCode.WrongUsage;
            case CommandRuntimeException wrongUsage when UsageProblem.IsUsage(wrongUsage):
                printer.Print(LeftoverArguments.Find(resolver, arguments) ?? UsageProblem.From(wrongUsage, arguments));
                return ExitCode.WrongUsage;
            default:
                printer.PrintDefect(exception);
                return ExitCode.InternalError;
        }
    }
}
