using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Documents;

/// <summary>What must hold in a joint of a job.</summary>
internal static class JobJointRules
{
    private const double MostStepMm = 10;
    private const double MostPlayMm = 50;
    private const double MostPlaceMm = 2000;
    private const int MostOpenings = 20;
    private const int MostStuds = 20;

    public static Problem? FirstProblem(JobJoint joint, string where) => Fault(joint) is var (field, expected)
        ? JobDocumentProblems.FieldUnusable($"{where}, joint of \"{joint.Port}\"", $"joints, {field}", expected)
        : null;

    private static (string Field, string Expected)? Fault(JobJoint joint) =>
        joint.Manifold.Count == 0 ? ("manifold", "a list of one photo, section document or outline or more")
        : joint.Opening is < 1 or > MostOpenings ? ("opening", "a number from 1, counted from left to right on the photo")
        : joint.PortFace.Count > 0 && joint.Station is not null ? ("station", "left out where \"portFace\" is named, for the face itself is matched")
        : joint.PortFace.Count > 0 && joint.Opening is not null ? ("opening", "left out where \"portFace\" is named, for all openings of the face are matched")
        : !(joint.ShiftMm is null or (>= 0 and <= MostPlayMm)) ? ("shiftMm", "millimetres from 0 to 50")
        : !(joint.TurnDeg is null or (>= 0 and <= 180)) ? ("turnDeg", "degrees from 0 to 180")
        : !(joint.AllowedStepMm is >= 0 and <= MostStepMm) ? ("allowedStepMm", "millimetres from 0 to 10")
        : !(joint.ClearanceMm is null or (>= 0 and <= MostPlayMm)) ? ("clearanceMm", "the holes' diameter less the studs', millimetres from 0 to 50")
        : PlaceFault(joint) ?? FreedomFault(joint);

    private static (string, string)? PlaceFault(JobJoint joint)
    {
        var studs = new[] { ("portStuds", joint.PortStuds), ("manifoldStuds", joint.ManifoldStuds), ("gasketStuds", joint.GasketStuds) };
        foreach (var (name, places) in studs)
        {
            if (places.Count > MostStuds || !places.All(IsPlace))
            {
                return (name, "places [x, y] in mm, such as [[12, 40], [88, 40]]");
            }
        }

        return joint.Pivot is { } pivot && !(IsPlace(pivot.Port) && IsPlace(pivot.Manifold))
            ? ("pivot", "a place [x, y] in mm on each part, such as {\"port\": [12, 40], \"manifold\": [12, 40]}")
            : null;
    }

    private static (string, string)? FreedomFault(JobJoint joint)
    {
        var hasStuds = joint.PortStuds.Count > 0;
        return hasStuds != (joint.ClearanceMm is not null) || hasStuds != joint.ManifoldStuds.Count > 0
                ? ("clearanceMm", "given together with \"portStuds\" and \"manifoldStuds\", all three or none")
            : joint.ManifoldStuds.Count != joint.PortStuds.Count ? ("manifoldStuds", "as many places as \"portStuds\", in the same order")
            : joint.GasketStuds.Count > 0 && (joint.Gasket.Count == 0 || joint.GasketStuds.Count != joint.PortStuds.Count)
                ? ("gasketStuds", "as many places as \"portStuds\", in the same order, beside a \"gasket\"")
            : joint.Pivot is not null && hasStuds ? ("pivot", "left out where studs are given: a joint either turns about a pivot or plays round its studs")
            : joint.PortFace.Count == 0 && (hasStuds || joint.Pivot is not null)
                ? ("portFace", "named where studs or a pivot are given, for they are places on the face, which a slice of a mould does not show")
            : null;
    }

    private static bool IsPlace(IReadOnlyList<double> place) => place.Count == 2 && place.All(value => Math.Abs(value) <= MostPlaceMm);
}
