using SectionScan.Metrology.Outlines;

namespace SectionScan.Porting.Lengthwise;

/// <summary>The sharp outward corners of an outline, rounded ones included.</summary>
internal static class OutlineCorners
{
    private const double LeastTurn = 45 * Math.PI / 180;
    private const double NearMm = 1.5;
    private const double FarMm = 5;

    /// <summary>Indices of the corners in the outline's order: where the directions before and behind differ most, by 45° or more.</summary>
    public static IReadOnlyList<int> Of(Outline even, double spacingMm)
    {
        var (near, far) = ((int)Math.Round(NearMm / spacingMm), (int)Math.Round(FarMm / spacingMm));
        var turns = new double[even.Count];
        for (var i = 0; i < turns.Length; i++)
        {
            var before = Math.Atan2(even[i - near].YMm - even[i - far].YMm, even[i - near].XMm - even[i - far].XMm);
            var behind = Math.Atan2(even[i + far].YMm - even[i + near].YMm, even[i + far].XMm - even[i + near].XMm);
            turns[i] = Math.IEEERemainder(behind - before, 2 * Math.PI);
        }

        var corners = new List<int>();
        for (var i = 0; i < turns.Length; i++)
        {
            var isGreatest = turns[i] >= LeastTurn;
            for (var k = 1; k <= far && isGreatest; k++)
            {
                isGreatest = turns[i] >= turns[(i + k) % turns.Length] && turns[i] > turns[(i - k + turns.Length) % turns.Length];
            }

            if (isGreatest)
            {
                corners.Add(Centre(turns, i));
            }
        }

        corners.Sort();
        return corners;
    }

    /// <summary>The middle of the level stretch about a greatest turn: a sharp corner turns alike wherever it lies between the windows.</summary>
    private static int Centre(double[] turns, int at)
    {
        var (sum, weights) = (0.0, 0.0);
        var count = turns.Length;
        for (var k = -count / 40; k <= count / 40; k++)
        {
            var turn = turns[(at + k + count) % count];
            if (turn > 0.95 * turns[at])
            {
                sum += k;
                weights++;
            }
        }

        return (at + (int)Math.Round(sum / weights) + count) % count;
    }
}
