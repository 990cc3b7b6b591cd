using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace SectionScan.Imaging.Edges;

/// <summary>A blurred step (<see cref="BlurredStep"/>) at the even places of a profile: from a table with a row for each phase that the
/// step may have between two places, so that a whole profile is read by loads of neighbours.</summary>
internal sealed class BlurredSteps
{
    private const int Reach = 6;

    // As fine as the step itself is tabled where a place is half a blur wide.
    private const int Phases = 128;

    private readonly int columns;
    private readonly double[] table;

    /// <summary>Makes the table.</summary>
    /// <param name="blurMm">Standard deviation of the blur.</param>
    /// <param name="stepMm">The distance between the profile's places.</param>
    public BlurredSteps(double blurMm, double stepMm)
    {
        (BlurMm, StepMm) = (blurMm, stepMm);
        columns = (int)Math.Ceiling(2 * Reach * blurMm / stepMm) + 1;
        table = new double[((Phases + 1) * columns) + Vector256<double>.Count];
        for (var phase = 0; phase <= Phases; phase++)
        {
            for (var column = 0; column < columns; column++)
            {
                table[(phase * columns) + column] = BlurredStep.At(((column + ((double)phase / Phases)) * stepMm / blurMm) - Reach);
            }
        }
    }

    /// <summary>Standard deviation of the blur, mm.</summary>
    public double BlurMm { get; }

    /// <summary>The distance between the profile's places, mm.</summary>
    public double StepMm { get; }

    /// <summary>How long a span must be to take so many places and the whole vectors that they are worked in.</summary>
    public static int RoomFor(int count) => (count + (2 * Vector256<double>.Count) - 1) & -Vector256<double>.Count;

    /// <summary>Fills in how much of the step is behind each place: 0 far before it, 1 far behind.</summary>
    /// <param name="firstMm">The first place, from the step.</param>
    /// <param name="count">How many places.</param>
    /// <param name="shares">Gets them, and zeros behind; as long as <see cref="RoomFor"/> says.</param>
    public void Fill(double firstMm, int count, Span<double> shares)
    {
        var place = ((firstMm / BlurMm) + Reach) * BlurMm / StepMm;
        var whole = Math.Clamp(Math.Floor(place), -1e6, 1e6);
        var phase = Math.Clamp(place - whole, 0, 1) * Phases;
        var row = Math.Min((int)phase, Phases - 1);
        var part = Vector256.Create(phase - row);
        var start = (int)whole;
        var from = Math.Clamp(-start, 0, count);
        var to = Math.Clamp(columns - start, from, count);
        shares[..from].Clear();
        ref var lower = ref MemoryMarshal.GetArrayDataReference(table);
        ref var target = ref MemoryMarshal.GetReference(shares);
        var at = (row * columns) + start;
        for (var k = from; k < to; k += Vector256<double>.Count)
        {
            var low = Vector256.LoadUnsafe(ref lower, (nuint)(at + k));
            var high = Vector256.LoadUnsafe(ref lower, (nuint)(at + columns + k));
            (low + (part * (high - low))).StoreUnsafe(ref target, (nuint)k);
        }

        shares[to..count].Fill(1);
        shares[count..].Clear();
    }
}
