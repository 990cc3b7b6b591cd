using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Solids;
using SectionScan.Porting.Lofts;

namespace SectionScan.Drawings.Solids;

/// <summary>A parallel view of a solid.</summary>
internal sealed class SolidView
{
    private readonly SpacePoint right;
    private readonly SpacePoint up;
    private readonly SpacePoint lamp;

    /// <param name="name">From where.</param>
    /// <param name="right">The direction that runs to the right on the page, of length 1.</param>
    /// <param name="up">A direction that runs up on the page; what of it runs along <paramref name="right"/> is taken away.</param>
    public SolidView(string name, SpacePoint right, SpacePoint up)
    {
        (Name, this.right) = (name, right);
        var along = up.Dot(right);
        var square = new SpacePoint(up.XMm - (along * right.XMm), up.YMm - (along * right.YMm), up.ZMm - (along * right.ZMm));
        this.up = Times(square, 1 / square.Length);
        Toward = right.Cross(this.up);

        // From the upper left, in front.
        var from = new SpacePoint(
            Toward.XMm + (0.8 * this.up.XMm) - (0.5 * right.XMm), Toward.YMm + (0.8 * this.up.YMm) - (0.5 * right.YMm),
            Toward.ZMm + (0.8 * this.up.ZMm) - (0.5 * right.ZMm));
        lamp = Times(from, 1 / from.Length);
    }

    public string Name { get; }

    /// <summary>The direction toward the viewer.</summary>
    public SpacePoint Toward { get; }

    public SectionPoint Seen(SpacePoint place) => new(place.Dot(right), place.Dot(up));

    public double LightOn(SpacePoint normal) => Math.Max(0, normal.Dot(lamp) / Math.Max(normal.Length, 1e-12));

    public OutlineBox BoxOf(Loft loft)
    {
        var seen = loft.Rings.SelectMany(ring => ring.Places).Select(Seen).ToList();
        return new(seen.Min(p => p.XMm), seen.Min(p => p.YMm), seen.Max(p => p.XMm), seen.Max(p => p.YMm));
    }

    private static SpacePoint Times(SpacePoint v, double factor) => new(v.XMm * factor, v.YMm * factor, v.ZMm * factor);
}
