using SectionScan.Drawings.Pages;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Cutting;

namespace SectionScan.Jobs.Templates;

/// <summary>Templates that are made but not written.</summary>
/// <param name="AllowanceMm">What a rough template leaves for finishing, mm.</param>
/// <param name="Made">The templates.</param>
/// <param name="Pages">The pages of paper, at actual size.</param>
/// <param name="Files">Each file's name and what writes it: one PDF, an SVG of each page, a DXF of each template.</param>
public sealed record TemplateSet(
    double AllowanceMm, IReadOnlyList<TemplateAnswer.Made> Made, IReadOnlyList<Page> Pages, IReadOnlyList<(string Name, Action<Stream> Write)> Files)
{
    /// <summary>Writes all or nothing.</summary>
    /// <param name="folder">Where to; made when it is not there.</param>
    public Result<TemplateAnswer> Write(string folder) => OutputFolder.Open(folder).Then(open => open.WriteAll(Files)).Then<TemplateAnswer>(paths =>
        new TemplateAnswer(TemplateAnswer.SchemaName, AllowanceMm, Made, Pages.Count, paths, CutCautions.All));
}
