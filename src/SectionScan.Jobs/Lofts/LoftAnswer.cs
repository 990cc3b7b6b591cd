using SectionScan.Jobs.Digitising;

namespace SectionScan.Jobs.Lofts;

/// <summary>A port's solid as one document for programs.</summary>
/// <param name="Schema">Its schema's name.</param>
/// <param name="Name">The port's name.</param>
/// <param name="Stations">How many stations it runs through.</param>
/// <param name="LengthMm">The centreline's length, mm.</param>
/// <param name="SolidVolumeMm3">The volume inside the surface, mm³.</param>
/// <param name="SectionVolume">The volume from the sections' areas, with u and U.</param>
/// <param name="DifferencePercent">The first less the second, in percent of it.</param>
/// <param name="Triangles">How many triangles the surface has.</param>
/// <param name="IsClosed">True when the surface has no hole.</param>
/// <param name="Files">The files written.</param>
public sealed record LoftAnswer(
    string Schema, string Name, int Stations, double LengthMm, double SolidVolumeMm3, DigitiseAnswer.MeasurePart SectionVolume, double DifferencePercent,
    int Triangles, bool IsClosed, IReadOnlyList<string> Files)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/loft/1";

    /// <summary>Makes the answer.</summary>
    public static LoftAnswer Of(LoftOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        return new(
            SchemaName, outcome.Port.Name, outcome.Loft.Stations.Count, outcome.Port.LengthMm, outcome.Mesh.VolumeMm3,
            DigitiseAnswer.MeasurePart.Of((outcome.Schedule.VolumeMm3, "mm3")), 100 * outcome.VolumeDifference, outcome.Mesh.Triangles.Count,
            outcome.Mesh.IsClosed, outcome.Files);
    }
}
