using System.Globalization;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Imaging.Lenses;
using SectionScan.Jobs.Lenses;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Lens;

/// <summary>Makes a lens profile from photos of the bare sheet.</summary>
internal sealed class LensCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json, ProgressReport progress) : Command<LensSettings>
{
    public override int Execute(CommandContext context, LensSettings settings, CancellationToken cancellationToken)
    {
        var ratio = settings.PrintRatio ?? PrintRatioOption.True;
        var made = progress.Follow("Looking at", settings, follow => LensFiles.Make(settings.Photos, (ratio.X, ratio.Y), settings.Out, follow, settings.Checkerboard));
        if (!made.TryGet(out var profiling, out var problem))
        {
            if (settings.IsJson)
            {
                json.Write(new { Schema = "sectionscan/lens-result/1", Status = "failed", Error = new { problem.Code, Message = problem.What, problem.Remedy } });
            }

            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        foreach (var left in profiling.LeftOut)
        {
            problems.PrintWarning(left);
        }

        if (settings.IsJson)
        {
            json.Write(new
            {
                Schema = "sectionscan/lens-result/1",
                Status = "ok",
                File = settings.Out,
                profiling.Profile,
                LeftOut = profiling.LeftOut.Select(p => new { p.Code, Message = p.What, Photo = p.Where, p.Remedy }),
            });
        }
        else
        {
            Show(profiling, settings.Out);
        }

        return ExitCode.OfBatch(profiling.Profile.Photos.Count, profiling.LeftOut.Count);
    }

    private void Show(LensProfiling profiling, string path)
    {
        var profile = profiling.Profile;
        var table = new Table().Border(TableBorder.Simple).AddColumn("photo").AddColumn(new TableColumn("corners").RightAligned())
            .AddColumn(new TableColumn("tilt").RightAligned()).AddColumn(new TableColumn("rms").RightAligned());
        foreach (var photo in profile.Photos)
        {
            table.AddRow(
                new Text(photo.File), new Text(photo.Corners.ToString(CultureInfo.InvariantCulture)),
                new Text(FormattableString.Invariant($"{photo.TiltDeg:0.0}°")), new Text(FormattableString.Invariant($"{photo.RmsPx:0.000} px")));
        }

        terminal.WriteTable(table);
        var u = Math.Sqrt(profile.Covariance[0][0]);
        terminal.Answers.WriteLine(FormattableString.Invariant(
            $"Focal length {profile.Lens.FocalXPx:0.0} ± {2 * u:0.0} px, rms {profile.RmsPx:0.000} px, {100 * profile.CoveredShare:0} % of the frame covered."));
        terminal.Answers.WriteLine($"Lens profile written to {path}");
    }
}
