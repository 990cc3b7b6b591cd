using MathNet.Numerics.Distributions;
using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.GaugeStudies;

/// <summary>What photos of plugs of known size told of a camera, a sheet and the persons who use them.</summary>
/// <param name="Target">"sheet" or "card".</param>
/// <param name="PrintRatio">The ratios of the check bars that it was made with, across and up; null when none were told.</param>
/// <param name="HasLensProfile">True when it was made with a lens profile.</param>
/// <param name="CameraModels">Maker and model of the cameras as their photos name them.</param>
/// <param name="PixelMm">What a pixel covered, mm, on average.</param>
/// <param name="Plugs">The plugs.</param>
/// <param name="Readings">One for each photo.</param>
/// <param name="Bias">Edge and scale.</param>
/// <param name="RepeatabilityMm">Standard deviation of a width when the same person photographs the same plug again, mm.</param>
/// <param name="RepeatabilityFreedom">Its degrees of freedom.</param>
/// <param name="ReproducibilityMm">Standard deviation of a width between combinations of person, camera and sheet, mm; zero with one.</param>
/// <param name="Combinations">Combinations of person, camera and sheet.</param>
/// <param name="Factors">The same for person, camera and sheet alone.</param>
/// <remarks>The readings are how much too wide each plug was measured (<see cref="Plug.ExcessMm"/>); their analysis of variance is
/// <see cref="CrossedAnalysis"/>, their bias <see cref="BiasLine"/>.</remarks>
public sealed record GaugeStudy(
    string Target,
    IReadOnlyList<double>? PrintRatio,
    bool HasLensProfile,
    IReadOnlyList<string> CameraModels,
    double PixelMm,
    IReadOnlyList<Plug> Plugs,
    IReadOnlyList<PlugReading> Readings,
    BiasLine Bias,
    double RepeatabilityMm,
    int RepeatabilityFreedom,
    double ReproducibilityMm,
    int Combinations,
    IReadOnlyList<FactorSpread> Factors)
{
    /// <summary>The schema's name, stored inside each document.</summary>
    public const string SchemaName = "sectionscan/gauge/1";

    // The largest plug must be this many times the smallest: else edge and scale cannot be told apart.
    private const double LeastSpread = 1.5;

    // What a plug's mean is known to at best; keeps the weights finite.
    private const double FinestMm = 1e-4;

    /// <summary>The shop's own standard uncertainty of where an edge is read, mm: the bias, which is not corrected, what is not known of it,
    /// and how one photo differs from the next (JCGM 100:2008, F.2.4.5). Two edges make a width.</summary>
    public double EdgeStandardUncertaintyMm => Root(
        Bias.EdgeMm, Bias.EdgeStandardUncertaintyMm, RepeatabilityMm * FewRepeats / 2, ReproducibilityMm / 2);

    /// <summary>The shop's own relative standard uncertainty of the scale.</summary>
    public double ScaleStandardUncertainty => Root(Bias.Scale, Bias.ScaleStandardUncertainty);

    /// <summary>A standard deviation of few readings is itself not well known: Student's t at 95.45 % over 2 (JCGM 100:2008, G.3).</summary>
    private double FewRepeats => StudentT.InvCDF(0, 1, RepeatabilityFreedom, 0.97725) / 2;

    /// <summary>Works out a study.</summary>
    /// <param name="where">The study's file, for messages.</param>
    /// <param name="setup">Target, print ratios, lens profile and camera models of the photos; the rest is left out of account.</param>
    /// <param name="knownScale">Relative standard uncertainty of the print's scale as known without the plugs.</param>
    /// <param name="plugs">The plugs, each with a name of its own.</param>
    /// <param name="readings">The readings.</param>
    /// <returns>The study, or why these readings make none.</returns>
    public static Result<GaugeStudy> Of(
        string where, (string Target, IReadOnlyList<double>? PrintRatio, bool HasLensProfile, IReadOnlyList<string> CameraModels) setup,
        double knownScale, IReadOnlyList<Plug> plugs, IReadOnlyList<PlugReading> readings)
    {
        ArgumentNullException.ThrowIfNull(plugs);
        ArgumentNullException.ThrowIfNull(readings);
        var crossed = Crossed(readings, r => $"{r.Person} / {r.Camera} / {r.Sheet}");
        if (!CrossedAnalysis.IsCrossed(crossed))
        {
            return GaugeProblems.NotCrossed(where, crossed);
        }

        var (least, most) = (plugs.Min(p => p.MeanWidthMm), plugs.Max(p => p.MeanWidthMm));
        if (most < LeastSpread * least)
        {
            return GaugeProblems.PlugsTooAlike(where, least, most, LeastSpread);
        }

        var analysis = CrossedAnalysis.Of(crossed);
        var line = BiasLine.Through([.. plugs.Select(plug =>
        {
            var own = readings.Where(r => r.Plug == plug.Name).ToArray();
            return (plug.MeanWidthMm, own.Average(r => r.ExcessMm),
                Root(analysis.Repeatability / Math.Sqrt(own.Length), plug.StandardUncertaintyMm, FinestMm));
        })], knownScale);
        return new GaugeStudy(
            setup.Target, setup.PrintRatio, setup.HasLensProfile, setup.CameraModels, readings.Average(r => r.PixelMm), plugs, readings, line,
            analysis.Repeatability, analysis.RepeatabilityFreedom, analysis.Reproducibility, analysis.Operators,
            [Spread("person", readings, r => r.Person), Spread("camera", readings, r => r.Camera), Spread("sheet", readings, r => r.Sheet)]);
    }

    private static GaugeReading[] Crossed(IReadOnlyList<PlugReading> readings, Func<PlugReading, string> level) =>
        [.. readings.Select(r => new GaugeReading(r.Plug, level(r), r.ExcessMm))];

    private static FactorSpread Spread(string name, IReadOnlyList<PlugReading> readings, Func<PlugReading, string> level)
    {
        string[] levels = [.. readings.Select(level).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        var crossed = Crossed(readings, level);
        return new(name, levels, levels.Length > 1 && CrossedAnalysis.IsCrossed(crossed) ? CrossedAnalysis.Of(crossed).Reproducibility : null);
    }

    private static double Root(params ReadOnlySpan<double> parts)
    {
        double sum = 0;
        foreach (var part in parts)
        {
            sum += part * part;
        }

        return Math.Sqrt(sum);
    }
}
