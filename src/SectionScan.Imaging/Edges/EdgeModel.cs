using System.Runtime.CompilerServices;

namespace SectionScan.Imaging.Edges;

/// <summary>What a light profile across a face's edge should look like: the face's level, then for the width of the visible wall
/// the wall's, then the ground's with its slope, all blurred alike.</summary>
/// <param name="Steps">The blur.</param>
/// <param name="StripMm">Width of the wall that shows; 0 for none.</param>
/// <param name="WallLevel">The wall's level as far as known, NaN when not.</param>
/// <param name="SlopeStiffness">What a slope of the ground costs: little where a shadow may fall off, much where none can.</param>
/// <param name="WallFirmness">How firmly it is held: noise of a reading over what is known of the wall's level, squared.</param>
internal readonly record struct EdgeModel(BlurredSteps Steps, double StripMm, double WallLevel, double WallFirmness, double SlopeStiffness)
{
    private const int MostOnStack = 256;

    /// <summary>Fits the levels for an edge at a given place by linear least squares.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="edgeMm">The face's edge.</param>
    /// <param name="levels">Gets the levels.</param>
    /// <returns>The sum of squares that is left.</returns>
    [SkipLocalsInit]
    public double LeftOver(in EdgeProfile profile, double edgeMm, out EdgeLevels levels)
    {
        var room = profile.Values.Length;
        var leave = room <= MostOnStack ? stackalloc double[room] : new double[room];
        var first = profile.FromMm - edgeMm;
        Steps.Fill(first, profile.Count, leave);
        if (StripMm <= 0)
        {
            var plain = EdgeEquations.Plain(profile, leave, first, Steps.StepMm);
            return plain.Solve(profile.Squares, SlopeStiffness, out levels);
        }

        var arrive = room <= MostOnStack ? stackalloc double[room] : new double[room];
        Steps.Fill(first - StripMm, profile.Count, arrive);
        var walled = EdgeEquations.Walled(profile, leave, arrive, first - StripMm, Steps.StepMm);
        return double.IsNaN(WallLevel)
            ? walled.Solve(profile.Squares, SlopeStiffness, 0, 0, out levels)
            : walled.Solve(profile.Squares, SlopeStiffness, WallLevel, WallFirmness, out levels);
    }
}
