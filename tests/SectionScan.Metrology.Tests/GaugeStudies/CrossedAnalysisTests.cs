using SectionScan.Metrology.GaugeStudies;

namespace SectionScan.Metrology.Tests.GaugeStudies;

public sealed class CrossedAnalysisTests
{
    // AIAG, Measurement Systems Analysis Reference Manual, 4th ed. (2010), figure III-B 15: ten parts, three appraisers, three trials.
    // Data and results written down from memory; that the sums of squares agree to the last printed digit vouches for both.
    private static readonly double[][] Appraisers =
    [
        [
            0.29, 0.41, 0.64, -0.56, -0.68, -0.58, 1.34, 1.17, 1.27, 0.47, 0.50, 0.64, -0.80, -0.92, -0.84,
            0.02, -0.11, -0.21, 0.59, 0.75, 0.66, -0.31, -0.20, -0.17, 2.26, 1.99, 2.01, -1.36, -1.25, -1.31,
        ],
        [
            0.08, 0.25, 0.07, -0.47, -1.22, -0.68, 1.19, 0.94, 1.34, 0.01, 1.03, 0.20, -0.56, -1.20, -1.28,
            -0.20, 0.22, 0.06, 0.47, 0.55, 0.83, -0.63, 0.08, -0.34, 1.80, 2.12, 2.19, -1.68, -1.62, -1.50,
        ],
        [
            0.04, -0.11, -0.15, -1.38, -1.13, -0.96, 0.88, 1.09, 0.67, 0.14, 0.20, 0.11, -1.46, -1.07, -1.45,
            -0.29, -0.67, -0.49, 0.02, 0.01, 0.21, -0.46, -0.56, -0.49, 1.77, 1.45, 1.87, -1.49, -1.77, -2.16,
        ],
    ];

    [Fact]
    public void The_handbook_s_worked_study_gives_the_handbook_s_table()
    {
        var analysis = CrossedAnalysis.Of(Handbook());

        Assert.Equal(3.1673, analysis.OperatorSquares, 4);
        Assert.Equal(88.3619, analysis.PartSquares, 4);
        Assert.Equal(0.3590, analysis.InteractionSquares, 4);
        Assert.Equal(2.7589, analysis.WithinSquares, 4);
        Assert.True(analysis.IsInteractionPooled);
        Assert.Equal(0.199933, analysis.Repeatability, 6);
        Assert.Equal(0.226838, analysis.Reproducibility, 6);
        // Printed as 0.302373; the printed parts 0.199933 and 0.226838 themselves add up to 0.302372.
        Assert.Equal(0.30237, analysis.GaugeVariation, 5);
        Assert.Equal(1.042327, analysis.PartVariation, 6);
    }

    [Fact]
    public void An_operator_who_reads_every_part_higher_shows_as_reproducibility_alone()
    {
        // By hand: means of operators 0 and 0.2, so MS(operators) = p·n·0.02 = 0.08; repeats ±0.01, MS(within) = 0.0002.
        // Pooled over 4 + 1 degrees of freedom: 0.0008/5 = 0.00016. Component: (0.08 − 0.00016)/4 = 0.01996.
        GaugeReading[] readings =
        [
            new("a", "Ann", -0.01), new("a", "Ann", 0.01), new("b", "Ann", -0.01), new("b", "Ann", 0.01),
            new("a", "Bob", 0.19), new("a", "Bob", 0.21), new("b", "Bob", 0.19), new("b", "Bob", 0.21),
        ];

        var analysis = CrossedAnalysis.Of(readings);

        Assert.Equal(Math.Sqrt(0.00016), analysis.Repeatability, 9);
        Assert.Equal(Math.Sqrt(0.01996), analysis.Reproducibility, 9);
        Assert.Equal(0.1, analysis.Mean, 9);
    }

    [Fact]
    public void One_operator_alone_shows_no_reproducibility()
    {
        var analysis = CrossedAnalysis.Of([new("a", "Ann", 1), new("a", "Ann", 2), new("b", "Ann", 1), new("b", "Ann", 2)]);

        Assert.Equal(0, analysis.Reproducibility);
        Assert.Equal(Math.Sqrt(0.5), analysis.Repeatability, 9);
    }

    [Fact]
    public void A_study_with_a_cell_left_out_is_refused()
    {
        var readings = Handbook();

        Assert.False(CrossedAnalysis.IsCrossed(readings[1..]));
        Assert.Throws<ArgumentException>(() => CrossedAnalysis.Of(readings[1..]));
    }

    private static GaugeReading[] Handbook() =>
    [
        .. Appraisers.SelectMany((trials, who) => trials.Select(
            (value, i) => new GaugeReading($"part {i / 3}", $"appraiser {who}", value))),
    ];
}
