namespace SectionScan.Metrology.Comparison;

/// <summary>How the distances between two edges count in a best fit. Squares let one bad stretch draw the whole outline toward it, which
/// hides part of the stretch's own depth; the others hold to what most of the outline says.</summary>
public enum FitLoss
{
    /// <summary>The sum of squares.</summary>
    LeastSquares,

    /// <summary>The sum of absolute distances (L1).</summary>
    Absolute,

    /// <summary>Huber's: squares near zero, absolute distances beyond.</summary>
    Huber,

    /// <summary>Tukey's biweight: what lies far off does not count at all.</summary>
    Tukey,
}
