using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Progress;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Gauges;

/// <summary>Measures photos of plugs of known size and works out how well this camera, sheet and person measure.</summary>
public static class MakeGaugeStudy
{
    // What is seen may differ by this much from the table, mm and as a share: more is another plug, or a print that is far off.
    private const double MostOffMm = 1;
    private const double MostOffShare = 0.03;

    // The middles of straight sides stray by some hundredths of a millimetre; an arc of 60 % of a diameter of 20 mm by 0.3 mm.
    private const double MostRoughMm = 0.2;

    private const int FewPlugs = 3;
    private const int FewFreedoms = 8;

    /// <summary>Runs the study; all its photos are needed, so any that cannot be used stands in its way.</summary>
    /// <param name="table">The study's table.</param>
    /// <param name="settings">Lens profile and print ratios; the thickness is the table's.</param>
    /// <param name="progress">Told of each photo.</param>
    /// <param name="stop">Ends it.</param>
    public static GaugeOutcome Run(string table, DigitiseSettings settings, IProgress<JobProgress>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(settings);
        if (!TextFile.Read(table, StudyTable.MaximumBytes).Then(text => StudyTable.Read(text, table)).TryGet(out var rows, out var problem))
        {
            return new(null, [problem], []);
        }

        var steps = new StepCounter(rows.Count, progress);
        var measured = new Result<Measured>[rows.Count];
        var options = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = stop };
        Parallel.For(0, rows.Count, options, i =>
        {
            measured[i] = Measure(rows[i], settings);
            steps.Report(Path.GetFileName(rows[i].Photo));
        });

        var (good, problems) = (new List<Measured>(), new List<Problem>());
        foreach (var each in measured)
        {
            if (each.TryGet(out var reading, out problem))
            {
                good.Add(reading);
            }
            else
            {
                problems.Add(problem);
            }
        }

        if (problems.Count > 0)
        {
            return new(null, problems, []);
        }

        if (good.Select(m => m.Target).Distinct(StringComparer.Ordinal).Count() > 1)
        {
            return new(null, [StudyTableProblems.TwoTargets(table)], []);
        }

        IReadOnlyList<double>? ratio = settings.PrintRatio is { } r ? [r.X, r.Y] : null;
        string[] cameras = [.. good.Select(m => m.CameraModel).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        return GaugeStudy.Of(
            table, (good[0].Target, ratio, settings.Lens is not null, cameras), settings.KnownScaleStandardUncertainty, [.. rows.Select(row => row.Plug).Distinct()], [.. good.Select(m => m.Reading)])
            .TryGet(out var study, out problem)
            ? new(study, [], [.. Cautions(study)])
            : new(null, [problem], []);
    }

    private static Result<Measured> Measure(StudyRow row, DigitiseSettings settings)
    {
        // Corners of square plugs are never clear; they do not count.
        var how = settings with { ThicknessMm = row.ThicknessMm, Gauge = null, Shrinkage = null, KeepsUnclearEdges = row.Plug.HasCorners };
        if (!Digitiser.Digitise(row.Photo, how).TryGet(out var photo, out var problem))
        {
            return problem;
        }

        if (photo.Sections.Count + photo.Refused.Count != 1)
        {
            return StudyTableProblems.NotOnePlug(row.Photo, photo.Sections.Count + photo.Refused.Count);
        }

        var (section, plug) = (photo.Sections[0], row.Plug);
        var seen = plug.Compare(section.Outline);
        if (IsOff(seen.LongerMm, plug.WidthMm) || IsOff(seen.ShorterMm, plug.HeightMm))
        {
            return StudyTableProblems.OtherPlug(row.Photo, plug, seen);
        }

        if (seen.RoughnessMm > MostRoughMm)
        {
            return StudyTableProblems.NotStraight(row.Photo, plug, seen.RoughnessMm);
        }

        var pixel = new Camera(photo.Camera.Lens, photo.Camera.Pose).MillimetresPerPixel(section.Placement.Origin, section.ThicknessMm);
        return new Measured(
            new(Path.GetFileName(row.Photo), plug.Name, row.Person, row.Camera, row.Sheet, seen.ExcessMm, pixel), photo.Target.Kind, photo.Photo.Camera);

        static bool IsOff(double seenMm, double statedMm) => Math.Abs(seenMm - statedMm) > MostOffMm + (MostOffShare * statedMm);
    }

    private static IEnumerable<string> Cautions(GaugeStudy study)
    {
        if (study.Combinations == 1)
        {
            yield return "One person, camera and sheet took part: how others differ is not known, and the study holds for these alone. Have a second person, camera or print take part.";
        }

        if (study.Plugs.Count < FewPlugs || study.RepeatabilityFreedom < FewFreedoms)
        {
            yield return "The study is small, so that its own uncertainty is large. Three plugs or more of different size, three photos each, tell more.";
        }

        if (Math.Abs(study.Bias.Scale) > Math.Max(0.001, 2 * study.Bias.ScaleStandardUncertainty))
        {
            yield return FormattableString.Invariant(
                $"Lengths come out {100 * Math.Abs(study.Bias.Scale):0.00} % too {(study.Bias.Scale > 0 ? "large" : "small")}. Measure the check bars again and give --print-ratio, and check the plugs' thickness.");
        }

        if (Math.Abs(study.Bias.EdgeMm) > Math.Max(0.02, 2 * study.Bias.EdgeStandardUncertaintyMm))
        {
            yield return FormattableString.Invariant(
                $"Edges are read {Math.Abs(study.Bias.EdgeMm):0.000} mm too far {(study.Bias.EdgeMm > 0 ? "outward" : "inward")}. Light the plugs evenly, expose for the paper, and make sure that their edges are sharp.");
        }
    }

    private sealed record Measured(PlugReading Reading, string Target, string? CameraModel);
}
