using System.Globalization;
using System.Text;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Lengthwise;
using SectionScan.Drawings.Outlines;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Lengthwise;

namespace SectionScan.Jobs.Lengthwise;

/// <summary>Reads a port cut lengthwise and draws it.</summary>
public static class ReadLengthwise
{
    /// <summary>Runs the order.</summary>
    public static Result<LengthwiseOutcome> Run(LengthwiseOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var warnings = new List<string>();
        if (!Read(order, order.Input, warnings).TryGet(out var shape, out var problem))
        {
            return problem;
        }

        LengthwiseComparison? comparison = null;
        if (order.Reference is not null)
        {
            if (!Read(order, order.Reference, warnings).TryGet(out var reference, out problem))
            {
                return problem;
            }

            comparison = LengthwiseComparison.Of(reference, shape, order.Alignment);
        }

        var outcome = new LengthwiseOutcome(shape, comparison, warnings, []);
        return order.OutputFolder is null ? outcome : Write(order, outcome);
    }

    private static Result<LengthwiseShape> Read(LengthwiseOrder order, string path, List<string> warnings)
    {
        if (path.EndsWith(".json", StringComparison.OrdinalIgnoreCase) || OutlineFile.IsKnown(path))
        {
            return SectionInput.Read(path, string.Empty, TimeProvider.System)
                .Then(input => LengthwiseFinder.Find(input.Name, input.Outline, input.ErrorSources, order.FaceIsRight));
        }

        return Digitiser.Digitise(path, order.Settings).Then(photo =>
        {
            warnings.AddRange(photo.Warnings);
            if (photo.Sections.MaxBy(section => PolygonMoments.Of(section.Outline.Points).AreaMm2) is not { } section)
            {
                return photo.Refused.Count > 0 ? photo.Refused[0] : LengthwiseProblems.NothingFound(path);
            }

            // That no tag lies beside it is as it should be: a lengthwise cut is no station.
            warnings.AddRange(section.Cautions.Where(caution => caution.Code != SectionCautions.NoTag).Select(caution => caution.InWords()));
            return LengthwiseFinder.Find(Path.GetFileNameWithoutExtension(path), section.Outline, section.ErrorSources, order.FaceIsRight);
        });
    }

    private static Result<LengthwiseOutcome> Write(LengthwiseOrder order, LengthwiseOutcome outcome)
    {
        var shape = outcome.Shape;
        if (!LengthwiseDrawing.Template(shape, order.Paper, order.Unit).TryGet(out var template, out var problem))
        {
            return problem;
        }

        List<Page> pages = [LengthwiseDrawing.Shape(shape, Notes(shape, order.Unit), order.Unit)];
        if (outcome.Comparison is { } comparison)
        {
            pages.Add(LengthwiseDrawing.Comparison(comparison, Notes(comparison, order.Unit), order.Unit));
        }

        var name = FileNames.Safe(shape.Name);
        var files = new List<(string Name, Action<Stream> Write)>
        {
            (name + ".lengthwise.svg", stream => SvgWriter.Write(pages[0], stream)),
            (name + ".lengthwise.pdf", stream => PdfWriter.Write(pages, stream, pages[0].Title)),
            (name + ".floor-and-roof.pdf", stream => PdfWriter.Write([template], stream, template.Title)),
            (name + ".floor-and-roof.svg", stream => SvgWriter.Write(template, stream)),
            (name + ".floor-and-roof.dxf", stream => DxfWriter.Write(LengthwiseDrawing.ToDxf(shape), stream, order.Unit)),
            (name + ".centreline.csv", stream => stream.Write(Encoding.UTF8.GetBytes(CentrelineTable(shape)))),
        };
        if (pages.Count > 1)
        {
            files.Add((name + ".comparison.svg", stream => SvgWriter.Write(pages[1], stream)));
        }

        return OutputFolder.Open(order.OutputFolder!).Then(folder => folder.WriteAll(files)).Then<LengthwiseOutcome>(written => outcome with { Files = written });
    }

    private static List<string> Notes(LengthwiseShape shape, LengthUnit unit)
    {
        var u = new LengthwiseUncertainty(shape);
        return
        [
            $"centreline {MeasureText.Length(new(shape.LengthMm, 0), unit)}, height at the face {MeasureText.Length(u.Height(shape.Face), unit)}, at the seat {MeasureText.Length(u.Height(shape.Seat), unit)}",
            $"numbers: height square to the centreline, every {LengthwiseDrawing.StepName(unit)} from the face; orange: circles of the turns",
        ];
    }

    private static List<string> Notes(LengthwiseComparison comparison, LengthUnit unit)
    {
        var notes = new List<string> { $"the floor rises by {MeasureText.Deviation(comparison.MeanFloorRiseMm, unit)} in the mean, at most {MeasureText.Deviation(-comparison.HighestFloor.DeviationMm, unit)}" };
        if (comparison.Uncertainty is not null)
        {
            notes.Add($"U of a deviation {MeasureText.Length(new(Estimate.CoverageFactor * comparison.UsualStandardUncertaintyMm, 0), unit)} (k = 2) where the edge is as sure as usual");
        }

        return notes;
    }

    private static string CentrelineTable(LengthwiseShape shape)
    {
        var text = new StringBuilder("distance_mm,x_mm,y_mm,height_mm,u_height_mm\n");
        var u = new LengthwiseUncertainty(shape);
        foreach (var place in shape.Centreline)
        {
            text.Append(CultureInfo.InvariantCulture, $"{place.DistanceMm:0.000},{place.Place.XMm:0.0000},{place.Place.YMm:0.0000},{place.HeightMm:0.0000},{u.Height(place).StandardUncertainty:0.0000}\n");
        }

        return text.ToString();
    }
}
