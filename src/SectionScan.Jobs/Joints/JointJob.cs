using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Imaging.Digitising;
using SectionScan.Porting.Joints;

namespace SectionScan.Jobs.Joints;

/// <summary>A joint to be matched from files.</summary>
/// <param name="Port">The port face; null when it is given as read.</param>
/// <param name="Manifold">The manifold's flange.</param>
/// <param name="Gasket">The gasket, or null.</param>
/// <param name="Flow">Which way the gas passes.</param>
/// <param name="Freedom">How far the manifold can be moved; a pivot comes from the faces.</param>
/// <param name="AllowedStepMm">The step that is left alone, mm.</param>
/// <param name="Settings">How photos are digitised.</param>
/// <param name="OutputFolder">Where drawings, template and tables go; null writes none.</param>
/// <param name="Paper">The template's paper.</param>
/// <param name="Unit">What lengths are labelled in.</param>
public sealed record JointJob(
    FaceInput? Port,
    FaceInput Manifold,
    FaceInput? Gasket,
    JointFlow Flow,
    JointFreedom Freedom,
    double AllowedStepMm,
    DigitiseSettings Settings,
    string? OutputFolder,
    PaperSize Paper,
    LengthUnit Unit)
{
    /// <summary>Which of the manifold's openings is meant, from left to right as it was seen, from 1; null takes all.</summary>
    public int? ManifoldOpening { get; init; }
}
