namespace SectionScan.Imaging.Edges;

/// <summary>How a slice's wall leans: how much farther out its foot stands than the face's edge. A taper of the port gives the
/// same all round; a cut that is not square gives a share that goes with the direction.</summary>
/// <param name="AllRoundMm">The same all round, mm, outward positive.</param>
/// <param name="AlongXMm">More where the wall looks along +x of the target, mm.</param>
/// <param name="AlongYMm">More where the wall looks along +y of the target, mm.</param>
internal sealed record WallFlare(double AllRoundMm, double AlongXMm, double AlongYMm)
{
    /// <summary>A wall square to the face.</summary>
    public static WallFlare None { get; } = new(0, 0, 0);

    /// <summary>The flare where the wall looks along a normal.</summary>
    public double AtMm((double X, double Y) normal) => AllRoundMm + (AlongXMm * normal.X) + (AlongYMm * normal.Y);
}
