using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace SectionScan.Imaging.Edges;

/// <summary>The places of an even grid as edges of a profile where no wall shows. Such profiles all lie alike about the place where the edge
/// is looked for, so that the least squares are solved beforehand: for each place three patterns square on each other, and what a
/// profile has of none of them is left over.</summary>
internal sealed class EdgeGrid
{
    private const int Patterns = 3;

    private readonly int room;
    private readonly double[] patterns;

    /// <summary>Solves for every place.</summary>
    /// <param name="model">The edge, without a wall.</param>
    /// <param name="count">How many readings the profiles have.</param>
    /// <param name="fromMm">The first, from the place where the edge is looked for.</param>
    /// <param name="firstMm">The grid's first place.</param>
    /// <param name="stepMm">The grid's step.</param>
    /// <param name="places">How many places.</param>
    public EdgeGrid(EdgeModel model, int count, double fromMm, double firstMm, double stepMm, int places)
    {
        (Count, Places) = (count, places);
        room = BlurredSteps.RoomFor(count);
        patterns = new double[places * Patterns * room];
        var leave = new double[room];
        var none = new EdgeProfile(new float[count], fromMm, new double[room]);
        for (var place = 0; place < places; place++)
        {
            var first = fromMm - firstMm - (place * stepMm);
            model.Steps.Fill(first, count, leave);
            var f = EdgeEquations.Plain(none, leave, first, model.Steps.StepMm).Factors(model.SlopeStiffness);
            var own = patterns.AsSpan(place * Patterns * room, Patterns * room);
            for (var k = 0; k < count; k++)
            {
                var face = 1 - leave[k];
                var ground = leave[k] - (f.L10 * face);
                var slope = (leave[k] * (first + (k * model.Steps.StepMm))) - (f.L20 * face) - (f.L21 * ground);
                own[k] = face / Math.Sqrt(f.D0);
                own[room + k] = ground / Math.Sqrt(f.D1);
                own[(2 * room) + k] = slope / Math.Sqrt(f.D2);
            }
        }
    }

    /// <summary>How many readings the profiles have.</summary>
    public int Count { get; }

    /// <summary>How many places the grid has.</summary>
    public int Places { get; }

    /// <summary>What is left of a profile with the edge at each place, as <see cref="EdgeModel.LeftOver"/> says it.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="left">Gets the sums of squares.</param>
    public void LeftOver(in EdgeProfile profile, Span<double> left)
    {
        ref var values = ref MemoryMarshal.GetReference(profile.Values);
        ref var pattern = ref MemoryMarshal.GetArrayDataReference(patterns);
        for (var place = 0; place < Places; place++)
        {
            var own = (nuint)(place * Patterns * room);
            Vector256<double> face = default, ground = default, slope = default;
            for (nuint k = 0; k < (nuint)room; k += (nuint)Vector256<double>.Count)
            {
                var value = Vector256.LoadUnsafe(ref values, k);
                face = Vector256.MultiplyAddEstimate(value, Vector256.LoadUnsafe(ref pattern, own + k), face);
                ground = Vector256.MultiplyAddEstimate(value, Vector256.LoadUnsafe(ref pattern, own + (nuint)room + k), ground);
                slope = Vector256.MultiplyAddEstimate(value, Vector256.LoadUnsafe(ref pattern, own + (nuint)(2 * room) + k), slope);
            }

            var (a, b, c) = (Vector256.Sum(face), Vector256.Sum(ground), Vector256.Sum(slope));
            left[place] = Math.Max(0, profile.Squares - (a * a) - (b * b) - (c * c));
        }
    }
}
