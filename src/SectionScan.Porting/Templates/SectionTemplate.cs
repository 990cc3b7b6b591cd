using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Templates;

/// <summary>The shape of a template at actual size.</summary>
/// <param name="SectionName">The section it was made from.</param>
/// <param name="PortName">The port's name as the person wrote it; may be empty.</param>
/// <param name="Station">The station, or null.</param>
/// <param name="Kind">Plug or plate.</param>
/// <param name="Stage">Rough or finish.</param>
/// <param name="AllowanceMm">The metal that roughing leaves for finishing, mm.</param>
/// <param name="ClearanceMm">How much the edge stands off the port's outline, so that it slides, mm.</param>
/// <param name="Port">The port's outline at the stage, section frame, mm.</param>
/// <param name="Edge">The template's own edge: the port's outline less the clearance for a plug, with it for a plate.</param>
public sealed record SectionTemplate(
    string SectionName,
    string PortName,
    int? Station,
    TemplateKind Kind,
    TemplateStage Stage,
    double AllowanceMm,
    double ClearanceMm,
    Outline Port,
    Outline Edge)
{
    /// <summary>What roughing leaves for finishing unless told otherwise, mm: about 1/32 in. Common practice, no source.</summary>
    public const double UsualAllowanceMm = 0.8;

    /// <summary>Shapes a template.</summary>
    /// <param name="target">The finished port's outline, section frame, mm.</param>
    /// <param name="sectionName">The section's name.</param>
    /// <param name="portName">The port's name; may be empty.</param>
    /// <param name="station">The station, or null.</param>
    /// <param name="kind">Plug or plate.</param>
    /// <param name="stage">Rough or finish.</param>
    /// <param name="allowanceMm">Zero or more, mm; counts for the rough stage.</param>
    /// <param name="clearanceMm">Zero or more, mm.</param>
    /// <returns>The template, or <c>offset-closes</c>.</returns>
    public static Result<SectionTemplate> Of(
        Outline target, string sectionName, string portName, int? station, TemplateKind kind, TemplateStage stage, double allowanceMm, double clearanceMm)
    {
        ArgumentNullException.ThrowIfNull(target);
        ArgumentOutOfRangeException.ThrowIfNegative(allowanceMm);
        ArgumentOutOfRangeException.ThrowIfNegative(clearanceMm);
        return OutlineOffset.By(target, stage == TemplateStage.Rough ? -allowanceMm : 0, sectionName).Then(port =>
            OutlineOffset.By(port, kind == TemplateKind.Inside ? -clearanceMm : clearanceMm, sectionName).Then<SectionTemplate>(edge =>
                new SectionTemplate(sectionName, portName, station, kind, stage, allowanceMm, clearanceMm, port, edge)));
    }

    /// <summary>Where the middle of a cut or of a printed line runs that takes its whole width from the waste and leaves the edge true.</summary>
    /// <param name="widthMm">The width of the kerf or line, mm, zero or more.</param>
    /// <returns>The path, outside a plug's edge and inside a plate's cut-out; or <c>offset-closes</c>.</returns>
    public Result<Outline> CutPath(double widthMm)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(widthMm);
        return OutlineOffset.By(Edge, (Kind == TemplateKind.Inside ? 0.5 : -0.5) * widthMm, SectionName);
    }
}
