namespace SectionScan.Metrology.Comparison;

/// <summary>How one section is laid on another.</summary>
/// <param name="Method">By what.</param>
/// <param name="Rule">For a best fit: what it may change and how distances count.</param>
/// <param name="IsMirrored">Exchange left and right of the measured section first, about its guide axis, or its y axis where no guide axis
/// is marked.</param>
public sealed record AlignmentChoice(SectionAlignmentMethod Method, FitRule Rule, bool IsMirrored = false)
{
    /// <summary>How a person moved the section by hand afterwards.</summary>
    public HandMove ByHand { get; init; } = HandMove.None;

    /// <summary>Moved and turned, holding to what most of the outline says: a local over-cut keeps its depth.</summary>
    public static AlignmentChoice Usual { get; } = new(
        SectionAlignmentMethod.BestFit,
        new(AlignmentFreedom.X | AlignmentFreedom.Y | AlignmentFreedom.Rotation, FitLoss.Tukey, HasEvenOffset: true));

    /// <summary>One of the usual methods; a best fit holds to what most of the outline says.</summary>
    public static AlignmentChoice Of(AlignmentMethod method, bool isMirrored) => method switch
    {
        AlignmentMethod.AsPlaced => AsPlaced with { IsMirrored = isMirrored },
        AlignmentMethod.Centroids => AsPlaced with { Method = SectionAlignmentMethod.Centroids, IsMirrored = isMirrored },
        AlignmentMethod.BestFit => Usual with { Rule = Usual.Rule with { Freedom = AlignmentFreedom.X | AlignmentFreedom.Y }, IsMirrored = isMirrored },
        _ => Usual with { IsMirrored = isMirrored },
    };

    /// <summary>As it lies.</summary>
    public static AlignmentChoice AsPlaced { get; } = new(SectionAlignmentMethod.AsPlaced, new(AlignmentFreedom.None));
}

/// <summary>By what one section is laid on another.</summary>
public enum SectionAlignmentMethod
{
    /// <summary>Not at all: both are in the same frame already.</summary>
    AsPlaced,

    /// <summary>Centroid on centroid, not turned.</summary>
    Centroids,

    /// <summary>By their edges, changing what is free.</summary>
    BestFit,

    /// <summary>Guide axis on guide axis; along it by the edges.</summary>
    GuideAxis,

    /// <summary>Floor line on floor line; along it by the edges.</summary>
    FloorLine,

    /// <summary>By the points that are marked in both.</summary>
    Points,
}
