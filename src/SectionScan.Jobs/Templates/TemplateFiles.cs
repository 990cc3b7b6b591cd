using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Templates;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Templates;

namespace SectionScan.Jobs.Templates;

/// <summary>Writes templates at actual size: one PDF, an SVG of each page, a DXF of each template.</summary>
public static class TemplateFiles
{
    /// <summary>Makes templates and writes them; nothing is written when any of the sections cannot be used.</summary>
    /// <param name="order">What is wanted.</param>
    /// <param name="libraryPath">The library's file.</param>
    /// <param name="folder">Where to; made when it is not there.</param>
    /// <param name="time">The clock.</param>
    public static Result<TemplateAnswer> Write(TemplateOrder order, string libraryPath, string folder, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(order);
        var sections = new List<SectionInput>();
        foreach (var text in order.Sections)
        {
            if (!SectionInput.Read(text, libraryPath, time).TryGet(out var section, out var problem))
            {
                return problem;
            }

            sections.Add(section);
        }

        return Make(order, sections).Then(made => made.Write(folder));
    }

    /// <summary>Makes templates of sections at hand.</summary>
    /// <param name="order">What is wanted; its own sections are not looked at.</param>
    /// <param name="sections">The sections.</param>
    public static Result<TemplateSet> Make(TemplateOrder order, IReadOnlyList<SectionInput> sections)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(sections);
        if (!Shape(order, sections).TryGet(out var templates, out var problem)
            || !Draw(templates, order, order.LineWidthMm).TryGet(out var printed, out problem)
            || !Draw(templates, order, order.KerfMm).TryGet(out var cut, out problem))
        {
            return problem;
        }

        var title = order.PortName.Length > 0 ? $"Templates, {order.PortName}" : "Templates";
        var pages = TemplatePages.Build([.. printed, .. TemplateDrawing.Handles(printed, order.LineWidthMm, order.Hold, order.Unit)], title, order.Paper, order.LineWidthMm, order.Correction);
        var name = $"{FileNames.Safe(order.PortName.Length > 0 ? $"templates-{order.PortName}" : "templates")}-{order.Paper.Name}";
        var files = new List<(string Name, Action<Stream> Write)> { (name + ".pdf", stream => PdfWriter.Write(pages, stream, title)) };
        for (var i = 0; i < pages.Count; i++)
        {
            var page = pages[i];
            files.Add((FormattableString.Invariant($"{name}-page-{i + 1}.svg"), stream => SvgWriter.Write(page, stream)));
        }

        var made = new List<TemplateAnswer.Made>();
        for (var i = 0; i < templates.Count; i++)
        {
            var lines = cut[i].ToDxf();
            var dxf = UniqueName(templates[i], made);
            files.Add((dxf, stream => DxfWriter.Write(lines, stream, order.Unit)));
            made.Add(Describe(templates[i], dxf));
        }

        foreach (var handle in TemplateDrawing.Handles(cut, order.KerfMm, order.Hold, order.Unit))
        {
            files.Add((FormattableString.Invariant($"handle-{handle.TongueMm:0}.dxf"), stream => DxfWriter.Write(handle.ToDxf(), stream, order.Unit)));
        }

        return new TemplateSet(order.AllowanceMm, made, pages, files);
    }

    private static Result<IReadOnlyList<SectionTemplate>> Shape(TemplateOrder order, IReadOnlyList<SectionInput> sections)
    {
        var templates = new List<SectionTemplate>();
        foreach (var section in sections)
        {
            foreach (var (kind, stage) in order.Kinds.SelectMany(kind => order.Stages.Select(stage => (kind, stage))))
            {
                var shaped = SectionTemplate.Of(
                    section.Outline, section.Name, order.PortName, section.Station, kind, stage, order.AllowanceMm, order.ClearanceMm);
                if (!shaped.TryGet(out var template, out var problem))
                {
                    return problem;
                }

                templates.Add(template);
            }
        }

        return templates;
    }

    private static Result<IReadOnlyList<TemplatePiece>> Draw(IReadOnlyList<SectionTemplate> templates, TemplateOrder order, double cutWidthMm)
    {
        var pieces = new List<TemplatePiece>();
        foreach (var template in templates)
        {
            if (!TemplateDrawing.Build(template, cutWidthMm, order.Hold, order.Unit).TryGet(out var piece, out var problem))
            {
                return problem;
            }

            pieces.Add(piece);
        }

        return pieces;
    }

    private static TemplateAnswer.Made Describe(SectionTemplate template, string dxf)
    {
        var (facts, moments) = (PolygonFacts.Of(template.Edge), PolygonMoments.Of(template.Edge.Points));
        return new(template.SectionName, template.Station, KindWord(template), StageWord(template), moments.AreaMm2, facts.WidthMm, facts.HeightMm, dxf);
    }

    private static string UniqueName(SectionTemplate template, List<TemplateAnswer.Made> made)
    {
        var name = $"{FileNames.Safe(template.SectionName)}.{KindWord(template)}.{StageWord(template)}";
        var taken = made.Count(each => each.Dxf.StartsWith(name + ".", StringComparison.OrdinalIgnoreCase));
        return taken == 0 ? name + ".dxf" : FormattableString.Invariant($"{name}.{taken + 1}.dxf");
    }

    private static string KindWord(SectionTemplate template) => template.Kind == TemplateKind.Inside ? "inside" : "outside";

    private static string StageWord(SectionTemplate template) => template.Stage == TemplateStage.Rough ? "rough" : "finish";
}
