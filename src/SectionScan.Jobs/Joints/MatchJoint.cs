using System.Globalization;
using System.Text;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Joints;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Joints;

namespace SectionScan.Jobs.Joints;

/// <summary>Matches a manifold to a port and draws what to do.</summary>
public static class MatchJoint
{
    /// <summary>Runs the job.</summary>
    public static Result<JointOutcome> Run(JointJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(job.Port);
        return job.Port.Read(JointSide.Port, job.Flow, job.Settings).Then(port => Run(job, port));
    }

    /// <summary>Runs the job with a port face that is there already.</summary>
    /// <param name="job">The job.</param>
    /// <param name="port">The port face.</param>
    public static Result<JointOutcome> Run(JointJob job, ReadFace port)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(port);
        if (!job.Manifold.Read(JointSide.Manifold, job.Flow, job.Settings).TryGet(out var manifold, out var problem))
        {
            return problem;
        }

        if (job.ManifoldOpening > manifold.Face.Openings.Count)
        {
            return FaceProblems.OpeningMissing(job.Manifold.Files[0], job.ManifoldOpening.Value, manifold.Face.Openings.Count);
        }

        ReadFace? gasket = null;
        if (job.Gasket is not null && !job.Gasket.Read(JointSide.Port, job.Flow, job.Settings).TryGet(out gasket, out problem))
        {
            return problem;
        }

        var outlet = job.ManifoldOpening is { } k ? manifold.Face with { Openings = [manifold.Face.Openings[k - 1]] } : manifold.Face;
        var freedom = port.Pivot is { } at && manifold.Pivot is { } own ? job.Freedom with { Pivot = (at, own) } : job.Freedom;
        var order = new JointOrder(port.Face, outlet, job.Flow, freedom) { Gasket = gasket?.Face, AllowedStepMm = job.AllowedStepMm };
        DigitisedPhoto[] photos = [.. port.Photos, .. manifold.Photos, .. gasket?.Photos ?? []];
        return JointMatching.Match(order).Then(match => job.OutputFolder is null
            ? new JointOutcome(match, [], photos)
            : Write(match, job.OutputFolder, job.Paper, job.Unit).Then<JointOutcome>(files => new JointOutcome(match, files, photos)));
    }

    // Picture, template for both sides and steps of a match; all or none.
    private static Result<IReadOnlyList<string>> Write(JointMatch match, string folder, PaperSize paper, LengthUnit unit)
    {
        var first = match.Openings[0];
        var title = $"{first.Manifold.Name} on {first.Port.Name}";
        if (!JointTemplate.Build(match, title, paper).TryGet(out var template, out var problem))
        {
            return problem;
        }

        IReadOnlyList<Page> pages = [JointDrawing.Whole(match, title, unit), .. match.Openings.Select(opening => JointDrawing.Steps(match, opening, unit))];
        var name = $"{FileNames.Safe(first.Manifold.Name)}-on-{FileNames.Safe(first.Port.Name)}";
        var files = new List<(string Name, Action<Stream> Write)>
        {
            (name + ".joint.svg", stream => SvgWriter.Write(pages[0], stream)),
            (name + ".joint.pdf", stream => PdfWriter.Write(pages, stream, title)),
            (name + ".template.pdf", stream => PdfWriter.Write(template, stream, title)),
            (name + ".template-port.svg", stream => SvgWriter.Write(template[0], stream)),
            (name + ".template-manifold.svg", stream => SvgWriter.Write(template[1], stream)),
            (name + ".template-port.dxf", stream => DxfWriter.Write(JointTemplate.ToDxf(match, JointSide.Port), stream, unit)),
            (name + ".template-manifold.dxf", stream => DxfWriter.Write(JointTemplate.ToDxf(match, JointSide.Manifold), stream, unit)),
            (name + ".steps.csv", stream => stream.Write(Encoding.UTF8.GetBytes(StepTable(match)))),
        };
        return OutputFolder.Open(folder).Then(open => open.WriteAll(files));
    }

    private static string StepTable(JointMatch match)
    {
        var text = new StringBuilder("opening,x_mm,y_mm,direction_deg,region,step_mm\n");
        for (var k = 0; k < match.Openings.Count; k++)
        {
            foreach (var step in match.Openings[k].Steps)
            {
                text.Append(CultureInfo.InvariantCulture, $"{k + 1},{step.Reference.XMm:0.0000},{step.Reference.YMm:0.0000},{step.Direction.Degrees:0.00},{RegionWords.Of(step.Region)},{step.DeviationMm:0.0000}\n");
            }
        }

        return text.ToString();
    }
}
