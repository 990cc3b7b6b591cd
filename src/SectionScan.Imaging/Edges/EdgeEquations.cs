using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace SectionScan.Imaging.Edges;

/// <summary>The normal equations of an edge whose levels are looked for: face, ground, the ground's slope, and wall. Their terms are sums
/// over the profile, taken four places at a time; this is where most of the time of measuring goes.</summary>
internal struct EdgeEquations
{
    // A whisper on the diagonal keeps a missing level (a strip outside the profile) finite.
    private const double Whisper = 1e-9;
    private const double LeastPivot = 1e-12;

    private double faceFace;
    private double groundFace;
    private double groundGround;
    private double slopeFace;
    private double slopeGround;
    private double slopeSlope;
    private double wallFace;
    private double wallGround;
    private double wallSlope;
    private double wallWall;
    private double face;
    private double ground;
    private double slope;
    private double wall;

    /// <summary>The equations where no wall shows.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="leave">How much of the face is left behind at each place.</param>
    /// <param name="firstMm">The first place, from the edge.</param>
    /// <param name="stepMm">The step.</param>
    public static EdgeEquations Plain(in EdgeProfile profile, ReadOnlySpan<double> leave, double firstMm, double stepMm)
    {
        ref var y0 = ref MemoryMarshal.GetReference(profile.Values);
        ref var l0 = ref MemoryMarshal.GetReference(leave);
        var place = Places(firstMm, stepMm);
        var stride = Vector256.Create(Vector256<double>.Count * stepMm);
        Vector256<double> sl = default, sll = default, slt = default, sllt = default, sltlt = default, sly = default, slty = default;
        for (nuint k = 0; k < (nuint)profile.Count; k += (nuint)Vector256<double>.Count)
        {
            var (y, l) = (Vector256.LoadUnsafe(ref y0, k), Vector256.LoadUnsafe(ref l0, k));
            var lt = l * place;
            sl += l;
            sll = Vector256.MultiplyAddEstimate(l, l, sll);
            slt += lt;
            sllt = Vector256.MultiplyAddEstimate(l, lt, sllt);
            sltlt = Vector256.MultiplyAddEstimate(lt, lt, sltlt);
            sly = Vector256.MultiplyAddEstimate(l, y, sly);
            slty = Vector256.MultiplyAddEstimate(lt, y, slty);
            place += stride;
        }

        var (left, both, lefty) = (Vector256.Sum(sl), Vector256.Sum(sll), Vector256.Sum(sly));
        var (sloped, slopedBoth) = (Vector256.Sum(slt), Vector256.Sum(sllt));
        return new()
        {
            faceFace = profile.Count - (2 * left) + both,
            groundFace = left - both,
            groundGround = both,
            slopeFace = sloped - slopedBoth,
            slopeGround = slopedBoth,
            slopeSlope = Vector256.Sum(sltlt),
            face = profile.Sum - lefty,
            ground = lefty,
            slope = Vector256.Sum(slty),
        };
    }

    /// <summary>The equations where a strip of wall shows between face and ground.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="leave">How much of the face is left behind at each place.</param>
    /// <param name="arrive">How much of the wall is.</param>
    /// <param name="firstMm">The first place, from the foot of the wall.</param>
    /// <param name="stepMm">The step.</param>
    public static EdgeEquations Walled(
        in EdgeProfile profile, ReadOnlySpan<double> leave, ReadOnlySpan<double> arrive, double firstMm, double stepMm)
    {
        ref var y0 = ref MemoryMarshal.GetReference(profile.Values);
        ref var l0 = ref MemoryMarshal.GetReference(leave);
        ref var a0 = ref MemoryMarshal.GetReference(arrive);
        var place = Places(firstMm, stepMm);
        var stride = Vector256.Create(Vector256<double>.Count * stepMm);
        Vector256<double> sl = default, sa = default, sll = default, sla = default, saa = default, sat = default, slat = default;
        Vector256<double> saat = default, satat = default, sly = default, say = default, saty = default;
        for (nuint k = 0; k < (nuint)profile.Count; k += (nuint)Vector256<double>.Count)
        {
            var (y, l, a) = (Vector256.LoadUnsafe(ref y0, k), Vector256.LoadUnsafe(ref l0, k), Vector256.LoadUnsafe(ref a0, k));
            var at = a * place;
            sl += l;
            sa += a;
            sat += at;
            sll = Vector256.MultiplyAddEstimate(l, l, sll);
            sla = Vector256.MultiplyAddEstimate(l, a, sla);
            saa = Vector256.MultiplyAddEstimate(a, a, saa);
            slat = Vector256.MultiplyAddEstimate(l, at, slat);
            saat = Vector256.MultiplyAddEstimate(a, at, saat);
            satat = Vector256.MultiplyAddEstimate(at, at, satat);
            sly = Vector256.MultiplyAddEstimate(l, y, sly);
            say = Vector256.MultiplyAddEstimate(a, y, say);
            saty = Vector256.MultiplyAddEstimate(at, y, saty);
            place += stride;
        }

        var (left, arrived) = (Vector256.Sum(sl), Vector256.Sum(sa));
        var (leftLeft, leftArrived, arrivedArrived) = (Vector256.Sum(sll), Vector256.Sum(sla), Vector256.Sum(saa));
        var (sloped, leftSloped, arrivedSloped) = (Vector256.Sum(sat), Vector256.Sum(slat), Vector256.Sum(saat));
        var (lefty, arrivedy) = (Vector256.Sum(sly), Vector256.Sum(say));
        return new()
        {
            faceFace = profile.Count - (2 * left) + leftLeft,
            groundFace = arrived - leftArrived,
            groundGround = arrivedArrived,
            slopeFace = sloped - leftSloped,
            slopeGround = arrivedSloped,
            slopeSlope = Vector256.Sum(satat),
            wallFace = left - arrived - leftLeft + leftArrived,
            wallGround = leftArrived - arrivedArrived,
            wallSlope = leftSloped - arrivedSloped,
            wallWall = leftLeft - (2 * leftArrived) + arrivedArrived,
            face = profile.Sum - lefty,
            ground = arrivedy,
            slope = Vector256.Sum(saty),
            wall = lefty - arrivedy,
        };
    }

    /// <summary>Solves them where no wall shows.</summary>
    /// <param name="squares">The sum of the profile's squares.</param>
    /// <param name="slopeStiffness">What a slope of the ground costs.</param>
    /// <param name="levels">Gets the levels.</param>
    /// <returns>The sum of squares that is left.</returns>
    public readonly double Solve(double squares, double slopeStiffness, out EdgeLevels levels)
    {
        var f = Factors(slopeStiffness);
        var z1 = ground - (f.L10 * face);
        var z2 = slope - (f.L20 * face) - (f.L21 * z1);
        var (x0, x1, x2) = (face / f.D0, z1 / f.D1, z2 / f.D2);
        var left = squares - (face * x0) - (z1 * x1) - (z2 * x2);
        x1 -= f.L21 * x2;
        x0 -= (f.L10 * x1) + (f.L20 * x2);
        levels = new(x0, x1, x2, 0);
        return Math.Max(0, left);
    }

    /// <summary>Solves them where a strip of wall shows.</summary>
    /// <param name="squares">The sum of the profile's squares.</param>
    /// <param name="slopeStiffness">What a slope of the ground costs.</param>
    /// <param name="wallLevel">The wall's level as far as known.</param>
    /// <param name="wallFirmness">How firmly it is held; 0 for not at all.</param>
    /// <param name="levels">Gets the levels.</param>
    /// <returns>The sum of squares that is left.</returns>
    public readonly double Solve(double squares, double slopeStiffness, double wallLevel, double wallFirmness, out EdgeLevels levels)
    {
        var f = Factors(slopeStiffness);
        var l30 = wallFace / f.D0;
        var v1 = wallGround - (l30 * groundFace);
        var l31 = v1 / f.D1;
        var v2 = wallSlope - (l30 * slopeFace) - (v1 * f.L21);
        var l32 = v2 / f.D2;
        var d3 = Math.Max(wallWall + wallFirmness + Whisper - (l30 * wallFace) - (l31 * v1) - (l32 * v2), LeastPivot);
        var z1 = ground - (f.L10 * face);
        var z2 = slope - (f.L20 * face) - (f.L21 * z1);
        var z3 = wall + (wallFirmness * wallLevel) - (l30 * face) - (l31 * z1) - (l32 * z2);
        var (x0, x1, x2, x3) = (face / f.D0, z1 / f.D1, z2 / f.D2, z3 / d3);
        var left = squares + (wallFirmness * wallLevel * wallLevel) - (face * x0) - (z1 * x1) - (z2 * x2) - (z3 * x3);
        x2 -= l32 * x3;
        x1 -= (f.L21 * x2) + (l31 * x3);
        x0 -= (f.L10 * x1) + (f.L20 * x2) + (l30 * x3);
        levels = new(x0, x1, x2, x3);
        return Math.Max(0, left);
    }

    /// <summary>The lower triangle L and diagonal D of the three equations that every edge has: N = L·D·Lᵀ.</summary>
    public readonly (double D0, double D1, double D2, double L10, double L20, double L21) Factors(double slopeStiffness)
    {
        var d0 = Math.Max(faceFace + Whisper, LeastPivot);
        var (l10, l20) = (groundFace / d0, slopeFace / d0);
        var d1 = Math.Max(groundGround + Whisper - (l10 * groundFace), LeastPivot);
        var u21 = slopeGround - (l20 * groundFace);
        var l21 = u21 / d1;
        var d2 = Math.Max(slopeSlope + slopeStiffness + Whisper - (l20 * slopeFace) - (l21 * u21), LeastPivot);
        return (d0, d1, d2, l10, l20, l21);
    }

    private static Vector256<double> Places(double firstMm, double stepMm) =>
        Vector256.Create(firstMm, firstMm + stepMm, firstMm + (2 * stepMm), firstMm + (3 * stepMm));
}
