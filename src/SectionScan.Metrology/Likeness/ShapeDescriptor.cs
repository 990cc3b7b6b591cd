using System.Buffers.Binary;
using System.Numerics;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Likeness;

/// <summary>A shape in 64 numbers: 16 elliptic harmonics as complex Fourier coefficients z_k of x + iy, free of place and of where
/// the outline begins. Single precision: a part in ten million is far below what a photo gives.</summary>
/// <remarks><para>z_n = ((a + d) + i(c − b))/2 and z_(−n) = ((a − d) + i(c + b))/2 from the harmonic n of
/// <see cref="EllipticFourierSeries"/>. Moving the beginning by a share τ of the length multiplies z_k by exp(2πikτ); it is chosen so
/// that z_1 is real and positive. Kuhl and Giardina choose the long axis of the first ellipse instead, which is undecided between two
/// ends and drifts at random on a nearly round port; z_1, the circle in the outline, is never small on a section.</para>
/// <para>By Parseval's theorem the sum of |z_k|² differences is the mean squared distance between points at the same share of the
/// length, so that a distance between descriptors is a distance in mm.</para></remarks>
public sealed class ShapeDescriptor
{
    /// <summary>How many harmonics are kept.</summary>
    public const int HarmonicCount = 16;

    /// <summary>How many numbers: real and imaginary part of z_1, z_−1, z_2, z_−2, …</summary>
    public const int Length = 4 * HarmonicCount;

    /// <summary>The length of <see cref="ToBytes"/>.</summary>
    public const int ByteCount = Length * sizeof(float);

    /// <summary>The number of this recipe; descriptors of different recipes are not comparable.</summary>
    public const int RecipeVersion = 1;

    private readonly float[] numbers;

    private ShapeDescriptor(float[] numbers)
    {
        this.numbers = numbers;
        var sum = 0.0;
        foreach (var number in numbers)
        {
            sum += (double)number * number;
        }

        SizeMm = Math.Sqrt(sum);
    }

    /// <summary>The numbers, mm: real and imaginary parts of z_1, z_−1, z_2, z_−2, …</summary>
    public ReadOnlySpan<float> Numbers => numbers;

    /// <summary>The size: root mean square distance of the outline from its mean place, mm. The radius, for a circle.</summary>
    public double SizeMm { get; }

    /// <summary>The descriptor of an outline.</summary>
    public static ShapeDescriptor Of(Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        var harmonics = EllipticFourierSeries.Of(outline.Points, HarmonicCount).Harmonics;
        var first = new Complex(harmonics[0].A + harmonics[0].D, harmonics[0].C - harmonics[0].B);
        var back = first.Magnitude > 0 ? Complex.Conjugate(first) / first.Magnitude : Complex.One;
        var numbers = new float[Length];
        var turn = Complex.One;
        for (var i = 0; i < HarmonicCount; i++)
        {
            var h = harmonics[i];
            turn *= back;
            var forward = new Complex(h.A + h.D, h.C - h.B) / 2 * turn;
            var backward = new Complex(h.A - h.D, h.C + h.B) / 2 * Complex.Conjugate(turn);
            numbers[4 * i] = (float)forward.Real;
            numbers[(4 * i) + 1] = (float)forward.Imaginary;
            numbers[(4 * i) + 2] = (float)backward.Real;
            numbers[(4 * i) + 3] = (float)backward.Imaginary;
        }

        numbers[1] = 0;
        return new(numbers);
    }

    /// <summary>The descriptor from <see cref="ToBytes"/>, or null when the bytes are none: wrong length, or a number not finite.</summary>
    public static ShapeDescriptor? FromBytes(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length != ByteCount)
        {
            return null;
        }

        var numbers = new float[Length];
        for (var i = 0; i < Length; i++)
        {
            numbers[i] = BinaryPrimitives.ReadSingleLittleEndian(bytes[(i * sizeof(float))..]);
            if (!float.IsFinite(numbers[i]))
            {
                return null;
            }
        }

        return new(numbers);
    }

    /// <summary>The numbers as 32-bit floats, least byte first.</summary>
    public byte[] ToBytes()
    {
        var bytes = new byte[ByteCount];
        for (var i = 0; i < Length; i++)
        {
            BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(i * sizeof(float)), numbers[i]);
        }

        return bytes;
    }

    internal static ShapeDescriptor FromNumbers(ReadOnlySpan<float> numbers) => new(numbers.ToArray());

    /// <summary>The order k of the coefficient at a place in the row z_1, z_−1, z_2, z_−2, …</summary>
    internal static int OrderAt(int index) => index % 2 == 0 ? (index / 2) + 1 : -(index / 2) - 1;

    /// <summary>The descriptor of the shape mirrored left for right: z_k becomes (−1)^(k+1) times its conjugate.</summary>
    internal ShapeDescriptor Mirrored()
    {
        var mirrored = new float[Length];
        for (var i = 0; i < Length / 2; i++)
        {
            var sign = OrderAt(i) % 2 == 0 ? -1 : 1;
            mirrored[2 * i] = sign * numbers[2 * i];
            mirrored[(2 * i) + 1] = -sign * numbers[(2 * i) + 1];
        }

        return new(mirrored);
    }
}
