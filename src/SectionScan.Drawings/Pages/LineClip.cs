namespace SectionScan.Drawings.Pages;

/// <summary>Cuts lines off at the border of an upright rectangle on a page.</summary>
/// <remarks>Piece by piece after Liang and Barsky, "A new concept and method for line clipping", ACM Transactions on Graphics 3, 1984
/// (cited from memory).</remarks>
internal static class LineClip
{
    /// <summary>The runs of a line that lie within the rectangle; a closed line that lies within it wholly stays closed.</summary>
    public static IEnumerable<Contour> Within(Contour line, double left, double top, double right, double bottom)
    {
        if (line.Points.All(p => p.XMm >= left && p.XMm <= right && p.YMm >= top && p.YMm <= bottom))
        {
            yield return line;
            yield break;
        }

        var run = new List<PagePoint>();
        var count = line.IsClosed ? line.Points.Count : line.Points.Count - 1;
        for (var i = 0; i < count; i++)
        {
            var (from, to) = (line.Points[i], line.Points[(i + 1) % line.Points.Count]);
            if (Piece(from, to, left, top, right, bottom) is not { } piece)
            {
                continue;
            }

            if (run.Count > 0 && run[^1] != piece.From)
            {
                yield return new([.. run], IsClosed: false);
                run.Clear();
            }

            if (run.Count == 0)
            {
                run.Add(piece.From);
            }

            run.Add(piece.To);
        }

        if (run.Count > 1)
        {
            yield return new(run, IsClosed: false);
        }
    }

    private static (PagePoint From, PagePoint To)? Piece(PagePoint from, PagePoint to, double left, double top, double right, double bottom)
    {
        var (dx, dy) = (to.XMm - from.XMm, to.YMm - from.YMm);
        var (enter, leave) = (0.0, 1.0);
        foreach (var (step, room) in new[] { (-dx, from.XMm - left), (dx, right - from.XMm), (-dy, from.YMm - top), (dy, bottom - from.YMm) })
        {
            if (step == 0 && room < 0)
            {
                return null;
            }

            if (step < 0)
            {
                enter = Math.Max(enter, room / step);
            }
            else if (step > 0)
            {
                leave = Math.Min(leave, room / step);
            }
        }

        return enter >= leave ? null : (enter == 0 ? from : from.Moved(enter * dx, enter * dy), leave == 1 ? to : from.Moved(leave * dx, leave * dy));
    }
}
