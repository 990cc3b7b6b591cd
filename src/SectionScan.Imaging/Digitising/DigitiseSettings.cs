using SectionScan.Imaging.Scales;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Imaging.Digitising;

/// <summary>How a photo is to be digitised.</summary>
public sealed record DigitiseSettings
{
    /// <summary>Thickness of the slices, mm: height of the face above the paper. Zero for a flat thing.</summary>
    /// <value>0 to 60; null when nobody told it: then the slices are taken for flat, with a warning and a wide uncertainty.</value>
    public double? ThicknessMm { get; init; }

    /// <summary>Standard uncertainty of the thickness, mm.</summary>
    /// <value>Default: a calliper's and the cut's ±0.1 mm, rectangular (common practice, no source).</value>
    public double ThicknessStandardUncertaintyMm { get; init; } = 0.1 / Math.Sqrt(3);

    /// <summary>How much the mould has shrunk, when that is to be made good; null leaves slices as they are.</summary>
    public MouldShrinkage? Shrinkage { get; init; }

    /// <summary>What is looked for: slices of a mould in the sheet's window, or openings in the face beside the card.</summary>
    /// <value>Null: slices on the sheet, openings beside the card.</value>
    public bool? LooksForOpenings { get; init; }

    /// <summary>The lens profile, or null: then the lens is learnt from the photo itself.</summary>
    public LensProfile? Lens { get; init; }

    /// <summary>Measured over nominal length of the check bars, across and up; null when nobody checked the print.</summary>
    public (double X, double Y)? PrintRatio { get; init; }

    /// <summary>Relative standard uncertainty of the print's scale where no gauge study tells it: that of a calliper on the check bars, or of
    /// desktop printers when nobody checked.</summary>
    public double KnownScaleStandardUncertainty => PrintRatio is null ? PrintedScale.UncheckedPrintRelative : PrintedScale.BarUpRelative;

    /// <summary>The shop's own study of this camera and sheet, or null: then edge and scale are taken to be as uncertain as they usually are.</summary>
    public GaugeStudy? Gauge { get; init; }

    /// <summary>Where the scale comes from when it is no printed sheet or card.</summary>
    /// <value>Null: the sheet or the card is looked for.</value>
    public ScaleSource? Scale { get; init; }

    /// <summary>The direction of the roof for sections without a tag, as a turn from the sheet's top edge, counter-clockwise.</summary>
    /// <value>Null: toward the sheet's top edge.</value>
    public Angle? Up { get; init; }

    /// <summary>Places on slices that were missed before, px as displayed: what lies there is taken for a face, whatever it looks like.
    /// Its edge is judged like any other's.</summary>
    /// <value>Default none. Only for slices in the sheet's window.</value>
    public IReadOnlyList<PixelPoint> Seeds { get; init; } = [];

    /// <summary>True when faces are kept whose edge is unclear over a good part of its length, for who judges the rest of it.</summary>
    /// <value>Default false: they are refused.</value>
    public bool KeepsUnclearEdges { get; init; }

    /// <summary>True when the photo with the outlines over it is wanted too.</summary>
    /// <value>Default false.</value>
    public bool WantsPicture { get; init; }
}
