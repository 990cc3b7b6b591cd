using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace SectionScan.Metrology.Likeness;

/// <summary>Shapes held in memory, to find the ones nearest to a given shape. The answer is exact: every shape is looked at. Not
/// safe for several threads at once.</summary>
public sealed class LikenessIndex
{
    private const int Width = ShapeDescriptor.Length;
    private const int Orders = Width / 2;

    // Single precision of the bound: relative, and absolute for shapes that are the same but for their last digits.
    private const float RelativeSlack = 1e-5f;
    private const float SlackMm2 = 1e-9f;

    private readonly List<long> ids = [];
    private readonly Dictionary<long, int> rows = [];
    private float[] numbers = [];
    private float[] magnitudes = [];
    private float[] sizes = [];

    /// <summary>How many shapes are held.</summary>
    public int Count => ids.Count;

    /// <summary>Puts a shape in, in place of the one with the same number if there is one.</summary>
    public void Put(long id, ShapeDescriptor shape)
    {
        ArgumentNullException.ThrowIfNull(shape);
        if (!rows.TryGetValue(id, out var row))
        {
            row = ids.Count;
            rows[id] = row;
            ids.Add(id);
            Grow();
        }

        shape.Numbers.CopyTo(numbers.AsSpan(row * Width));
        Magnitudes(shape.Numbers, magnitudes.AsSpan(row * Orders, Orders));
        sizes[row] = (float)shape.SizeMm;
    }

    /// <summary>Takes a shape out; nothing happens when it is not there.</summary>
    public void Remove(long id)
    {
        if (!rows.Remove(id, out var row))
        {
            return;
        }

        var last = ids.Count - 1;
        if (row != last)
        {
            numbers.AsSpan(last * Width, Width).CopyTo(numbers.AsSpan(row * Width));
            magnitudes.AsSpan(last * Orders, Orders).CopyTo(magnitudes.AsSpan(row * Orders));
            sizes[row] = sizes[last];
            ids[row] = ids[last];
            rows[ids[row]] = row;
        }

        ids.RemoveAt(last);
    }

    /// <summary>The nearest shapes, nearest first; equal ones by their numbers.</summary>
    /// <param name="shape">The shape to compare with.</param>
    /// <param name="count">How many at most, 1 or more.</param>
    /// <param name="freedom">What may be done to the others.</param>
    /// <param name="admits">Which numbers may be found; null for all.</param>
    public IReadOnlyList<Neighbour> Nearest(ShapeDescriptor shape, int count, LikenessFreedom freedom, Func<long, bool>? admits = null)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(freedom);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var mirrored = freedom.MayMirror ? shape.Mirrored() : null;
        var nearest = new NearestRows(count, row => ids[row]);
        if (freedom.MayTurn)
        {
            SearchTurned(shape, mirrored, freedom.MayScale, nearest, admits);
        }
        else
        {
            SearchUpright(shape, mirrored, freedom.MayScale, nearest, admits);
        }

        var found = nearest.Rows.Select(row =>
        {
            var other = ShapeDescriptor.FromNumbers(numbers.AsSpan(row * Width, Width));
            return new Neighbour(ids[row], ShapeComparison.Compare(shape, other, freedom));
        });
        return [.. found.OrderBy(each => each.Likeness.DistanceMm).ThenBy(each => each.Id)];
    }

    private void SearchUpright(ShapeDescriptor shape, ShapeDescriptor? mirrored, bool mayScale, NearestRows nearest, Func<long, bool>? admits)
    {
        for (var row = 0; row < ids.Count; row++)
        {
            var other = numbers.AsSpan(row * Width, Width);
            var scale = Scale(shape, row, mayScale);
            var squared = Squared(shape.Numbers, other, scale);
            if (mirrored is not null)
            {
                squared = Math.Min(squared, Squared(mirrored.Numbers, other, scale));
            }

            if (squared <= nearest.LimitMm2 && (admits is null || admits(ids[row])))
            {
                nearest.Offer(row, squared);
            }
        }
    }

    // ||a| − |b|| never exceeds |a − b·turn|, so the magnitudes alone, which no turn changes, give a bound that most shapes fail.
    // Taken in the order of that bound, the search ends with certainty when the bound passes the worst one kept.
    private void SearchTurned(ShapeDescriptor shape, ShapeDescriptor? mirrored, bool mayScale, NearestRows nearest, Func<long, bool>? admits)
    {
        Span<float> own = stackalloc float[Orders];
        Magnitudes(shape.Numbers, own);
        var bounds = new (int Row, float Bound)[ids.Count];
        for (var row = 0; row < bounds.Length; row++)
        {
            bounds[row] = (row, Squared(own, magnitudes.AsSpan(row * Orders, Orders), Scale(shape, row, mayScale)));
        }

        var queue = new PriorityQueue<int, float>(bounds);
        while (queue.TryDequeue(out var row, out var bound) && bound <= (nearest.LimitMm2 * (1 + RelativeSlack)) + SlackMm2)
        {
            if (admits is not null && !admits(ids[row]))
            {
                continue;
            }

            var other = numbers.AsSpan(row * Width, Width);
            var scale = Scale(shape, row, mayScale);
            Offer(nearest, row, TurnSearch.Nearest(shape.Numbers, other, scale, nearest.LimitMm2));
            if (mirrored is not null)
            {
                Offer(nearest, row, TurnSearch.Nearest(mirrored.Numbers, other, scale, nearest.LimitMm2));
            }
        }
    }

    private static void Offer(NearestRows nearest, int row, (double SquaredMm2, double Turn)? found)
    {
        if (found is { } hit)
        {
            nearest.Offer(row, hit.SquaredMm2);
        }
    }

    private float Scale(ShapeDescriptor shape, int row, bool mayScale) => mayScale && sizes[row] > 0 ? (float)(shape.SizeMm / sizes[row]) : 1;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static float Squared(ReadOnlySpan<float> a, ReadOnlySpan<float> b, float scale)
    {
        // Both widths, 64 and 32, are whole multiples of any vector of today (4, 8 or 16 floats).
        ref var left = ref MemoryMarshal.GetReference(a);
        ref var right = ref MemoryMarshal.GetReference(b);
        var sum = Vector<float>.Zero;
        for (nuint i = 0; i < (nuint)a.Length; i += (nuint)Vector<float>.Count)
        {
            var difference = Vector.LoadUnsafe(ref left, i) - (scale * Vector.LoadUnsafe(ref right, i));
            sum += difference * difference;
        }

        return Vector.Sum(sum);
    }

    private static void Magnitudes(ReadOnlySpan<float> shape, Span<float> result)
    {
        for (var i = 0; i < Orders; i++)
        {
            result[i] = MathF.Sqrt((shape[2 * i] * shape[2 * i]) + (shape[(2 * i) + 1] * shape[(2 * i) + 1]));
        }
    }

    private void Grow()
    {
        if (sizes.Length >= ids.Count)
        {
            return;
        }

        var capacity = Math.Max(64, sizes.Length * 2);
        Array.Resize(ref numbers, capacity * Width);
        Array.Resize(ref magnitudes, capacity * Orders);
        Array.Resize(ref sizes, capacity);
    }
}
