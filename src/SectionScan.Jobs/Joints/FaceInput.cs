using SectionScan.Drawings.Outlines;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Comparing;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Joints;
using SectionScan.Porting.Sections;

namespace SectionScan.Jobs.Joints;

/// <summary>A face of a joint as a person names it.</summary>
/// <param name="Role">"port", "manifold" or "gasket", for messages.</param>
/// <param name="Files">One photo of the face, or section documents of one photo, or one outline as DXF, SVG or CSV.</param>
/// <param name="Studs">Middles of studs or holes: in the target's frame (mm, y down) for photos and documents, in the drawing's own for DXF, SVG and CSV.</param>
/// <param name="Pivot">A place that stays, in the same frame; null without.</param>
/// <param name="View">From where it was seen.</param>
public sealed record FaceInput(string Role, IReadOnlyList<string> Files, IReadOnlyList<SectionPoint> Studs, SectionPoint? Pivot, FaceView View)
{
    private sealed record Found(
        string Name, Outline Outline, IReadOnlyList<OutlineErrorSource> Sources, SectionPlacement? Placement, bool IsOpening, string? Photo);

    /// <summary>Reads the face.</summary>
    /// <param name="side">Port or manifold; a gasket is taken for the port.</param>
    /// <param name="flow">Which way the gas passes.</param>
    /// <param name="settings">How photos are digitised.</param>
    public Result<ReadFace> Read(JointSide side, JointFlow flow, DigitiseSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var found = new List<Found>();
        var photos = new List<DigitisedPhoto>();
        foreach (var file in Files)
        {
            if (!ReadFile(file, settings, photos).TryGet(out var read, out var problem))
            {
                return problem;
            }

            found.AddRange(read);
        }

        if (found.Count > 1 && (found.Any(one => one.Placement is null) || found.Select(one => one.Photo).Distinct().Count() > 1))
        {
            return FaceProblems.NotOneFace(Role);
        }

        // One opening alone stands upright in its own frame; several, or places told beside it, need the target's.
        var isPlaced = found.Count > 1 || Studs.Count > 0 || Pivot is not null;
        var openings = found.Select(one => Opening(one, isPlaced)).ToList();
        var isYDown = isPlaced && found.Any(one => one.Placement is not null);
        var isFront = View == FaceView.Front || (View == FaceView.AsUsual && found.All(one => one.IsOpening));
        var frontIsWithFlow = (side == JointSide.Port) == (flow == JointFlow.Intake);
        return new ReadFace(new JointFace(Role, openings, [.. Studs.Select(Upright)], !isFront || frontIsWithFlow), Pivot is { } pivot ? Upright(pivot) : null, photos);

        SectionPoint Upright(SectionPoint place) => isYDown ? place with { YMm = -place.YMm } : place;
    }

    private static JointOpening Opening(Found found, bool isPlaced)
    {
        var opening = new JointOpening(found.Name, found.Outline, found.Sources);
        return isPlaced && found.Placement is { } lay
            ? opening.Moved(new(lay.Origin.XMm, -lay.Origin.YMm, lay.Up, 1, false))
            : opening;
    }

    private static Result<List<Found>> ReadFile(string file, DigitiseSettings settings, List<DigitisedPhoto> photos)
    {
        if (file.EndsWith(".json", StringComparison.OrdinalIgnoreCase) || OutlineFile.IsKnown(file))
        {
            return SectionInput.Read(file, string.Empty, TimeProvider.System).Then<List<Found>>(input => new List<Found>
            {
                new(
                    input.Name, input.Outline, input.ErrorSources, input.Document?.Placement,
                    input.Document?.Section.Subject == SectionSubject.Opening, input.Document?.Photo?.Sha256),
            });
        }

        return Digitiser.Digitise(file, settings with { LooksForOpenings = true }).Then<List<Found>>(photo =>
        {
            photos.Add(photo);
            return photo.Sections.Count == 0
                ? photo.Refused.Count > 0 ? photo.Refused[0] : JointProblems.NoOpening(file)
                : photo.Sections.Select((section, k) => new Found(
                    FormattableString.Invariant($"{Path.GetFileNameWithoutExtension(file)} opening {k + 1}"), section.Outline, section.ErrorSources,
                    section.Placement, true, file)).ToList();
        });
    }
}
