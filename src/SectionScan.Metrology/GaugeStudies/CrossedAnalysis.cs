namespace SectionScan.Metrology.GaugeStudies;

/// <summary>The analysis of variance of a crossed gauge study: every operator measures every part equally often.</summary>
/// <remarks>Two-way random-effects analysis with interaction. Source: AIAG, Measurement Systems Analysis Reference Manual, 4th ed. (2010),
/// chapter III section B and appendix A; the terms also in the NIST/SEMATECH e-Handbook of Statistical Methods, section 2.4.</remarks>
public sealed record CrossedAnalysis
{
    private CrossedAnalysis(int parts, int operators, int repeats)
    {
        (Parts, Operators, Repeats) = (parts, operators, repeats);
    }

    /// <summary>Number of parts p.</summary>
    public int Parts { get; }

    /// <summary>Number of operators o.</summary>
    public int Operators { get; }

    /// <summary>Number of readings r of each part by each operator.</summary>
    public int Repeats { get; }

    /// <summary>Mean of all readings.</summary>
    public double Mean { get; private init; }

    /// <summary>Sum of squares between parts, p − 1 degrees of freedom.</summary>
    public double PartSquares { get; private init; }

    /// <summary>Sum of squares between operators, o − 1 degrees of freedom.</summary>
    public double OperatorSquares { get; private init; }

    /// <summary>Sum of squares of the interaction, (p − 1)(o − 1) degrees of freedom.</summary>
    public double InteractionSquares { get; private init; }

    /// <summary>Sum of squares within the cells, p·o·(r − 1) degrees of freedom.</summary>
    public double WithinSquares { get; private init; }

    /// <summary>True when the interaction was no larger than the repeats (F ≤ 1) and was pooled with them.</summary>
    public bool IsInteractionPooled { get; private init; }

    /// <summary>Standard deviation of one operator's readings of one part.</summary>
    public double Repeatability { get; private init; }

    /// <summary>Degrees of freedom of <see cref="Repeatability"/>.</summary>
    public int RepeatabilityFreedom { get; private init; }

    /// <summary>Standard deviation between operators, with the interaction where it was not pooled; zero with one operator.</summary>
    public double Reproducibility { get; private init; }

    /// <summary>Standard deviation between parts.</summary>
    public double PartVariation { get; private init; }

    /// <summary>Repeatability and reproducibility together.</summary>
    public double GaugeVariation => Math.Sqrt((Repeatability * Repeatability) + (Reproducibility * Reproducibility));

    /// <summary>Analyses a study.</summary>
    /// <param name="readings">At least two parts, one operator and two repeats; each operator has each part equally often.</param>
    /// <returns>The components of variance; a negative one is zero, as is the field's custom.</returns>
    /// <exception cref="ArgumentException">The study is not crossed and balanced, too small, or a reading is not finite.</exception>
    public static CrossedAnalysis Of(IReadOnlyList<GaugeReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        if (!IsCrossed(readings))
        {
            throw new ArgumentException(
                "A crossed study needs two parts or more, each measured equally often, twice or more, by every operator, in finite numbers.",
                nameof(readings));
        }

        var parts = readings.GroupBy(r => r.Part, StringComparer.Ordinal).Select(g => g.Average(r => r.Value)).ToArray();
        var operators = readings.GroupBy(r => r.Operator, StringComparer.Ordinal).Select(g => g.Average(r => r.Value)).ToArray();
        var cells = readings.GroupBy(r => (r.Part, r.Operator)).Select(g => g.Select(r => r.Value).ToArray()).ToArray();
        var (p, o, n) = (parts.Length, operators.Length, cells[0].Length);
        var mean = readings.Average(r => r.Value);

        var partSquares = o * n * parts.Sum(m => Square(m - mean));
        var operatorSquares = p * n * operators.Sum(m => Square(m - mean));
        var within = cells.Sum(cell => cell.Sum(v => Square(v - cell.Average())));
        var interaction = Math.Max((n * cells.Sum(cell => Square(cell.Average() - mean))) - partSquares - operatorSquares, 0);

        var (freeWithin, freeInteraction) = (p * o * (n - 1), (p - 1) * (o - 1));
        var meanWithin = within / freeWithin;
        var isPooled = freeInteraction == 0 || interaction / freeInteraction <= meanWithin;
        var error = isPooled ? (within + interaction) / (freeWithin + freeInteraction) : meanWithin;
        var against = isPooled ? error : interaction / freeInteraction;
        var betweenOperators = o > 1 ? Math.Max(((operatorSquares / (o - 1)) - against) / (p * n), 0) : 0;
        var crossing = isPooled ? 0 : (against - error) / n;
        return new(p, o, n)
        {
            Mean = mean,
            PartSquares = partSquares,
            OperatorSquares = operatorSquares,
            InteractionSquares = interaction,
            WithinSquares = within,
            IsInteractionPooled = isPooled,
            Repeatability = Math.Sqrt(error),
            RepeatabilityFreedom = isPooled ? freeWithin + freeInteraction : freeWithin,
            Reproducibility = Math.Sqrt(betweenOperators + crossing),
            PartVariation = Math.Sqrt(Math.Max(((partSquares / (p - 1)) - against) / (o * n), 0)),
        };
    }

    /// <summary>Tells whether readings make a crossed, balanced study that can be analysed.</summary>
    /// <param name="readings">The readings.</param>
    public static bool IsCrossed(IReadOnlyList<GaugeReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var cells = readings.GroupBy(r => (r.Part, r.Operator)).Select(g => g.Count()).ToArray();
        var parts = readings.Select(r => r.Part).Distinct(StringComparer.Ordinal).Count();
        var operators = readings.Select(r => r.Operator).Distinct(StringComparer.Ordinal).Count();
        return parts >= 2 && cells.Length == parts * operators && cells[0] >= 2
            && cells.All(count => count == cells[0]) && readings.All(r => double.IsFinite(r.Value));
    }

    private static double Square(double x) => x * x;
}
