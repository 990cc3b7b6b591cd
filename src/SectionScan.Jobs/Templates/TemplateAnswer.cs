namespace SectionScan.Jobs.Templates;

/// <summary>The answer of <c>sectionscan template</c> for programs.</summary>
/// <param name="Schema">The schema's name.</param>
/// <param name="AllowanceMm">What a rough template leaves for finishing, mm.</param>
/// <param name="Templates">The templates made.</param>
/// <param name="Pages">How many pages of paper they take.</param>
/// <param name="Files">The files written: PDF, SVG of each page, DXF of each template.</param>
/// <param name="Cautions">The usual cautions.</param>
public sealed record TemplateAnswer(
    string Schema, double AllowanceMm, IReadOnlyList<TemplateAnswer.Made> Templates, int Pages, IReadOnlyList<string> Files, IReadOnlyList<string> Cautions)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/template/1";

    /// <summary>One template.</summary>
    /// <param name="Section">The section it was made from.</param>
    /// <param name="Station">The station, or null.</param>
    /// <param name="Kind">"inside" or "outside".</param>
    /// <param name="Stage">"rough" or "finish".</param>
    /// <param name="AreaMm2">The area within the template's edge, mm².</param>
    /// <param name="WidthMm">Its width, mm.</param>
    /// <param name="HeightMm">Its height, mm.</param>
    /// <param name="Dxf">The DXF file's name.</param>
    public sealed record Made(
        string Section, int? Station, string Kind, string Stage, double AreaMm2, double WidthMm, double HeightMm, string Dxf);
}
