using System.Globalization;
using System.Text;
using MathNet.Numerics.Distributions;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Rendering;
using SectionScan.Testing.Truth;

namespace SectionScan.Testing.Accuracy;

/// <summary>Counts how often the stated 95 % intervals (k = 2) hold the truth, over photos whose thickness, check bars and lens profile
/// are told as wrongly as the budget assumes.</summary>
/// <param name="draws">Draws a section of a Monte Carlo check (JCGM 101:2008) on the budget's sensitivities; 0: none.</param>
public sealed class CoverageCount(int draws = 0)
{
    // As the budget assumes: a calliper on bars of 200 mm across and 150 mm up, and ±0.1 mm of thickness, rectangular.
    private const double CalliperStandardUncertaintyMm = 0.05;
    private const double BarAcrossMm = 200;
    private const double BarUpMm = 150;
    private const double ThicknessHalfWidthMm = 0.1;

    // An interval misses by far when the error is more than this many standard uncertainties: a mistake, not chance.
    private const double FarOff = 3;

    private static readonly Measure[] Judged = [MeasureCatalogue.Area, MeasureCatalogue.Width, MeasureCatalogue.Height];
    private readonly List<double>[] normalised = [[], [], []];
    private readonly DrawnUncertainty[] drawn = [new(), new(), new()];
    private readonly List<string> farOff = [];
    private int missed;
    private int invented;

    /// <summary>The sections counted.</summary>
    public int Sections => normalised[0].Count;

    /// <summary>The share of the intervals of area (0), width (1) or height (2) that hold the truth.</summary>
    public double ShareOf(int measure) => normalised[measure].Count(e => Math.Abs(e) <= 2) / (double)Sections;

    /// <summary>Digitises a scene with wrongly told inputs and counts its sections.</summary>
    public void Add(RenderedScenes scenes, PhotoScene scene, bool hasProfile)
    {
        ArgumentNullException.ThrowIfNull(scenes);
        ArgumentNullException.ThrowIfNull(scene);
        var random = new Random(7919 * (scene.Seed + 1));
        var told = PhotoJudge.Told(PhotoRenderer.TruthOf(scene));
        var (x, y) = told.PrintRatio!.Value;
        var thickness = told.ThicknessMm + ThicknessHalfWidthMm * ((2 * random.NextDouble()) - 1);
        x += Normal.Sample(random, 0, CalliperStandardUncertaintyMm / BarAcrossMm);
        y += Normal.Sample(random, 0, CalliperStandardUncertaintyMm / BarUpMm);
        var lens = SceneLens.DrawnProfileOf(scene, random);
        var verdict = scenes.Judge(scene, told with { ThicknessMm = thickness, PrintRatio = (x, y), Lens = hasProfile ? lens : null });
        (missed, invented) = (missed + verdict.Missed.Count, invented + verdict.Invented);
        foreach (var found in verdict.Found)
        {
            Add(scene.Name, found);
        }
    }

    /// <summary>The table.</summary>
    public string Table()
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{Sections} sections; {missed} missed, {invented} invented\n");
        text.Append("measure   within U  rms(e/u)  mean(e/u)  p95(|e|/u)  worst\n");
        for (var k = 0; k < Judged.Length; k++)
        {
            double[] sizes = [.. normalised[k].Select(Math.Abs).Order()];
            var rms = Math.Sqrt(normalised[k].Average(e => e * e));
            text.Append(
                CultureInfo.InvariantCulture,
                $"{Judged[k].Label,-9}{100 * ShareOf(k),8:0.0} %{rms,9:0.00}{normalised[k].Average(),11:+0.00;-0.00}{sizes[(int)(0.95 * sizes.Length)],11:0.00}{sizes[^1],9:0.0}\n");
        }

        if (draws > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"Monte Carlo check (JCGM 101), {draws} draws a section: u drawn over u of the budget\n{DrawnUncertainty.Head}\n");
            for (var k = 0; k < Judged.Length; k++)
            {
                text.Append(CultureInfo.InvariantCulture, $"{Judged[k].Label,-9}{drawn[k].Line()}\n");
            }
        }

        return text.AppendJoin("", farOff).ToString();
    }

    private void Add(string name, FoundSection found)
    {
        var measured = MeasuredOutline.Of(found.Section.Outline, found.Section.ErrorSources, Judged);

        // The truth is turned to the up that was measured: how a tag was laid is no error of the measurement.
        var (sin, cos) = Math.SinCos(-found.Truth.UpError.Radians);
        SectionPoint[] turned = [.. found.Truth.Outline.Select(p => new SectionPoint((p.XMm * cos) - (p.YMm * sin), (p.XMm * sin) + (p.YMm * cos)))];
        var truth = SectionTruth.Of("", null, turned, found.Truth.Placement, false, 0, 0, null);
        double[] true3 = [truth.AreaMm2, truth.WidthMm, truth.HeightMm];
        if (draws > 0)
        {
            var summaries = OutlineMonteCarlo.Run(found.Section.Outline, found.Section.ErrorSources, Judged, draws, normalised[0].Count);
            for (var k = 0; k < Judged.Length; k++)
            {
                drawn[k].Add(summaries[k], measured.Quantities[k].Estimate.StandardUncertainty, true3[k]);
            }
        }

        for (var k = 0; k < Judged.Length; k++)
        {
            var estimate = measured.Quantities[k].Estimate;
            var error = (estimate.Value - true3[k]) / estimate.StandardUncertainty;
            normalised[k].Add(error);
            if (Math.Abs(error) > FarOff)
            {
                farOff.Add(FormattableString.Invariant(
                    $"{name} {found.Truth.Name} {Judged[k].Name}: error {estimate.Value - true3[k]:+0.000;-0.000}, u {estimate.StandardUncertainty:0.000}, e/u {error:+0.0;-0.0}\n"));
            }
        }
    }
}
