using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Summaries;

/// <summary>Lays a summary page out on sheets of paper: a cover, then the sections in order, each sheet numbered.</summary>
public static class SummaryPaper
{
    /// <summary>Lays the page out.</summary>
    /// <param name="page">The page.</param>
    /// <param name="paper">The paper, upright.</param>
    /// <returns>The sheets, the cover first.</returns>
    public static IReadOnlyList<Page> Layout(SummaryPage page, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(page);
        ArgumentNullException.ThrowIfNull(paper);
        var flow = new PaperFlow(page.Title, paper);
        Cover(flow, page);
        foreach (var section in page.Sections)
        {
            flow.Heading(section.Heading, BeginningMm(flow, section.Blocks, 0));
            for (var i = 0; i < section.Blocks.Count; i++)
            {
                if (section.Blocks[i] is ParagraphBlock)
                {
                    flow.KeepTogether(BeginningMm(flow, section.Blocks, i));
                }

                Block(flow, section.Blocks[i]);
            }
        }

        return flow.Finish(page.Footer);
    }

    private static void Cover(PaperFlow flow, SummaryPage page)
    {
        flow.Title(page.Title);
        foreach (var (name, value) in page.Facts)
        {
            flow.Fact(name, value);
        }

        flow.Space(4);
        flow.Paragraph(page.Introduction);
    }

    // A heading, or a sentence that leads to a table or drawing, alone at the foot of a sheet helps nobody: what begins below it must fit too.
    private static double BeginningMm(PaperFlow flow, IReadOnlyList<SummaryBlock> blocks, int at) => at >= blocks.Count ? 0 : blocks[at] switch
    {
        ParagraphBlock paragraph when at + 1 < blocks.Count && blocks[at + 1] is TableBlock or DrawingBlock or PhotographBlock =>
            flow.ParagraphMm(paragraph.Text) + BeginningMm(flow, blocks, at + 1),
        DrawingBlock drawing => flow.BeginningMm(drawing.Drawings),
        PhotographBlock => PaperFlow.MostPhotographMm + 12,
        TableBlock table => PaperTable.TogetherMm(flow, table),
        _ => 22,
    };

    private static void Block(PaperFlow flow, SummaryBlock block)
    {
        switch (block)
        {
            case ParagraphBlock paragraph:
                flow.Paragraph(paragraph.Text);
                break;
            case NoteBlock note:
                flow.Note((note.IsCaution ? "Caution. " : "") + note.Text, note.IsCaution);
                break;
            case TableBlock table:
                PaperTable.Add(flow, table);
                break;
            case DrawingBlock drawing:
                flow.Drawings(drawing.Drawings, drawing.Caption);
                break;
            case PhotographBlock photograph:
                flow.Photograph(photograph.Jpeg, photograph.Description, photograph.Caption);
                break;
            case PictureBlock picture:
                flow.Paragraph($"{picture.RelativePath}: {picture.Caption}");
                break;
            case FilesBlock files:
                foreach (var (path, description) in files.Files)
                {
                    flow.Paragraph($"{path}: {description}");
                }

                break;
            default:
                throw new ArgumentException($"No place on paper for a {block.GetType().Name}.", nameof(block));
        }
    }
}
