using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Comparisons;

/// <summary>The areas between a reference outline and the deviation drawn on its normals, enlarged.</summary>
/// <param name="marks">The deviations in order round the reference, 3 or more.</param>
/// <param name="view">Where the section lies on the page.</param>
/// <param name="exaggeration">How many times its size a deviation is drawn.</param>
internal sealed class DeviationBands(IReadOnlyList<DeviationMark> marks, SectionView view, double exaggeration)
{
    /// <summary>The mark's place on the reference.</summary>
    public PagePoint Foot(DeviationMark mark) => view.ToPage(mark.Place);

    /// <summary>The end of the mark's whisker.</summary>
    public PagePoint Tip(DeviationMark mark)
    {
        var length = mark.DeviationMm * exaggeration;
        return view.ToPage(new SectionPoint(mark.Place.XMm + (mark.NormalX * length), mark.Place.YMm + (mark.NormalY * length)));
    }

    /// <summary>The areas of one sign as contours, to be filled by the odd rule.</summary>
    /// <param name="sign">1 for outside, −1 for inside.</param>
    public IReadOnlyList<Contour> Areas(int sign)
    {
        if (marks.All(mark => HasSign(mark, sign)))
        {
            return [new([.. marks.Select(Foot)], IsClosed: true), new([.. marks.Select(Tip)], IsClosed: true)];
        }

        return [.. Runs(sign).Select(run => new Contour([.. run.Feet, .. Enumerable.Reverse(run.Tips)], IsClosed: true))];
    }

    /// <summary>The line through the whiskers' ends of one sign.</summary>
    public IReadOnlyList<Contour> Envelopes(int sign) => marks.All(mark => HasSign(mark, sign))
        ? [new([.. marks.Select(Tip)], IsClosed: true)]
        : [.. Runs(sign).Select(run => new Contour(run.Tips, IsClosed: false))];

    // Stretches of marks of one sign, each begun and ended on the reference where the deviation passes zero.
    private IEnumerable<(List<PagePoint> Feet, List<PagePoint> Tips)> Runs(int sign)
    {
        for (var start = 0; start < marks.Count; start++)
        {
            var before = marks[(start + marks.Count - 1) % marks.Count];
            if (!HasSign(marks[start], sign) || HasSign(before, sign))
            {
                continue;
            }

            var zero = Zero(before, marks[start]);
            var (feet, tips) = (new List<PagePoint> { zero }, new List<PagePoint> { zero });
            var at = start;
            for (; HasSign(marks[at % marks.Count], sign); at++)
            {
                feet.Add(Foot(marks[at % marks.Count]));
                tips.Add(Tip(marks[at % marks.Count]));
            }

            zero = Zero(marks[(at - 1) % marks.Count], marks[at % marks.Count]);
            feet.Add(zero);
            tips.Add(zero);
            yield return (feet, tips);
        }
    }

    private PagePoint Zero(DeviationMark from, DeviationMark to)
    {
        var share = from.DeviationMm / (from.DeviationMm - to.DeviationMm);
        var (a, b) = (Foot(from), Foot(to));
        return new(a.XMm + (share * (b.XMm - a.XMm)), a.YMm + (share * (b.YMm - a.YMm)));
    }

    private static bool HasSign(DeviationMark mark, int sign) => Math.Sign(mark.DeviationMm) == sign;
}
