using SectionScan.Porting.Joints;

namespace SectionScan.Porting.Documents;

/// <summary>A manifold to be matched to a port of the job. Places of studs, holes and the pivot are [x, y] in mm: from the card's top-left
/// corner, y down, where the face is a photo or its documents, in the drawing's own frame where it is DXF, SVG or CSV.</summary>
/// <param name="Port">The port; its section at the joint stands for the port face unless <see cref="PortFace"/> is named.</param>
/// <param name="Manifold">One photo of the flange with the card, or documents of its openings, or an outline as DXF, SVG or CSV.</param>
public sealed record JobJoint(string Port, IReadOnlyList<string> Manifold)
{
    /// <summary>The port face itself, named like the manifold; empty lets the port's section stand for it.</summary>
    public IReadOnlyList<string> PortFace { get; init; } = [];

    /// <summary>The gasket's openings, named in the same way, seen like the port face; empty without.</summary>
    public IReadOnlyList<string> Gasket { get; init; } = [];

    /// <summary>Which opening of the flange belongs to the port, from left to right on the photo from 1; null takes the first, or with a
    /// port face all.</summary>
    public int? Opening { get; init; }

    /// <summary>The station at the joint; null takes the first of an intake port and the last of an exhaust port.</summary>
    public int? Station { get; init; }

    /// <summary>The holes' diameter less the studs', mm; with the places of studs and holes.</summary>
    public double? ClearanceMm { get; init; }

    /// <summary>Middles of the port face's studs.</summary>
    public IReadOnlyList<IReadOnlyList<double>> PortStuds { get; init; } = [];

    /// <summary>Middles of the manifold's holes in the same order.</summary>
    public IReadOnlyList<IReadOnlyList<double>> ManifoldStuds { get; init; } = [];

    /// <summary>Middles of the gasket's holes in the same order; without them it is laid by its openings.</summary>
    public IReadOnlyList<IReadOnlyList<double>> GasketStuds { get; init; } = [];

    /// <summary>A place that stays, such as a dowel; then only the turn is free.</summary>
    public JobPivot? Pivot { get; init; }

    /// <summary>The farthest that the manifold can be shifted, mm; null when free.</summary>
    public double? ShiftMm { get; init; }

    /// <summary>The farthest that it can be turned, degrees; null when free.</summary>
    public double? TurnDeg { get; init; }

    /// <summary>A step that is left alone, mm.</summary>
    public double AllowedStepMm { get; init; }

    /// <summary>From where the port face was seen.</summary>
    public FaceView PortSeen { get; init; }

    /// <summary>From where the manifold was seen.</summary>
    public FaceView ManifoldSeen { get; init; }
}

/// <summary>A place of the port face and one of the manifold that stay together.</summary>
/// <param name="Port">On the port face, [x, y].</param>
/// <param name="Manifold">On the manifold, [x, y].</param>
public sealed record JobPivot(IReadOnlyList<double> Port, IReadOnlyList<double> Manifold);
