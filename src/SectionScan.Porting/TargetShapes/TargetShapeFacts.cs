namespace SectionScan.Porting.TargetShapes;

/// <summary>Where a target shape comes from. The outline itself is the target: these facts tell a person how it was settled on.</summary>
/// <param name="Own">The port's own section. The target lies in its frame, so that the two need no alignment.</param>
/// <param name="Reference">The section worked toward; null when the own section alone was changed.</param>
/// <param name="Motion">How the reference was laid on the own section.</param>
/// <param name="Steps">What was done, in order and in plain sentences.</param>
/// <param name="Shares">How far toward the reference in each sector: 0 stays at the own wall, 1 reaches the reference.</param>
/// <param name="Limits">The limits that were set, with what each held back.</param>
public sealed record TargetShapeFacts(
    TargetShapeSource Own,
    TargetShapeSource? Reference,
    ReferenceMotion Motion,
    IReadOnlyList<string> Steps,
    IReadOnlyList<SectorShare> Shares,
    IReadOnlyList<TargetLimit> Limits);

/// <summary>A section that a target was made from.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Sha256">SHA-256 of the document as it is written, lower-case hexadecimal; empty for a bare outline.</param>
public sealed record TargetShapeSource(string Name, string Sha256);

/// <summary>How a reference came to lie on the own section: mirrored about its y axis first (or not), scaled and turned about its
/// origin, then moved.</summary>
/// <param name="XMm">The move along x, mm.</param>
/// <param name="YMm">The move along y, mm.</param>
/// <param name="TurnDeg">The turn counter-clockwise, degrees.</param>
/// <param name="Scale">The factor of size.</param>
/// <param name="IsMirrored">True when left and right were exchanged first.</param>
public sealed record ReferenceMotion(double XMm, double YMm, double TurnDeg, double Scale, bool IsMirrored);

/// <summary>How far toward the reference one sector goes.</summary>
/// <param name="Sector">The sector in the trade's words: "floor", "roof left corner".</param>
/// <param name="Share">0 stays at the own wall, 1 reaches the reference; more than 1 goes beyond.</param>
public sealed record SectorShare(string Sector, double Share);

/// <summary>A limit that a target was held to.</summary>
/// <param name="Kind">"width", "height", "area", "keep-out" or "own metal" (metal cannot be put back).</param>
/// <param name="Bound">The most that is allowed of a width, height or area; the least distance to a keep-out.</param>
/// <param name="Unit">"mm" or "mm²".</param>
/// <param name="Note">The person's own words why; for a keep-out also its name. May be empty.</param>
/// <param name="Wanted">What it would have been without this limit, in the same unit.</param>
/// <param name="Stretches">Where it held the target back; empty when it was not active.</param>
public sealed record TargetLimit(
    string Kind, double Bound, string Unit, string Note, double Wanted, IReadOnlyList<ActiveStretch> Stretches)
{
    /// <summary>True when the limit held the target back anywhere.</summary>
    public bool IsActive => Stretches.Count > 0;
}

/// <summary>A stretch of the outline where a limit held the target back.</summary>
/// <param name="FromDeg">Where it begins: direction from the own section's centroid, degrees from x counter-clockwise.</param>
/// <param name="ToDeg">Where it ends, counter-clockwise from there.</param>
/// <param name="Sectors">The sectors that it touches, in words.</param>
/// <param name="HeldBackMm">The most that was held back, along the wall's normal, mm.</param>
public sealed record ActiveStretch(double FromDeg, double ToDeg, string Sectors, double HeldBackMm);
