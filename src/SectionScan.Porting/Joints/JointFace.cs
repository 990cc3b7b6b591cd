using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Porting.Joints;

/// <summary>One face of a joint with its openings, in one frame: mm, x right, y up.</summary>
/// <param name="Name">What to call it.</param>
/// <param name="Openings">One opening or more.</param>
/// <param name="Studs">Middles of its studs or of the holes for them; empty when not told.</param>
/// <param name="IsSeenWithFlow">True when x and y are as seen looking with the flow, false when looking against it. Looking at its own
/// face, an intake port and an exhaust pipe are seen with the flow, an intake manifold and an exhaust port against it.</param>
public sealed record JointFace(
    string Name, IReadOnlyList<JointOpening> Openings, IReadOnlyList<SectionPoint> Studs, bool IsSeenWithFlow)
{
    private static readonly SimilarityTransform Mirror = SimilarityTransform.Identity with { IsMirrored = true };

    /// <summary>The face as seen with the flow, its openings from left to right: mirrored about its y axis when it was seen against.</summary>
    public JointFace WithFlow
    {
        get
        {
            var face = IsSeenWithFlow ? this : this with
            {
                Openings = [.. Openings.Select(opening => opening.Moved(Mirror))],
                Studs = [.. Studs.Select(Mirror.Apply)],
                IsSeenWithFlow = true,
            };
            return face with { Openings = [.. face.Openings.OrderBy(opening => CentroidOf(opening).XMm)] };
        }
    }

    /// <summary>A place of this face as seen with the flow.</summary>
    public SectionPoint WithFlowAt(SectionPoint place) => IsSeenWithFlow ? place : Mirror.Apply(place);

    /// <summary>The middles of the openings.</summary>
    public IReadOnlyList<SectionPoint> Centroids => [.. Openings.Select(CentroidOf)];

    private static SectionPoint CentroidOf(JointOpening opening) => PolygonMoments.Of(opening.Outline.Points).Centroid;
}
