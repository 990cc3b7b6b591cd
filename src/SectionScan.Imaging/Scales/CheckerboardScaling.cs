using SectionScan.Imaging.Checkerboards;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Scales;

/// <summary>The scale of a plain checkerboard, in the photo itself or in another by the unmoved camera.</summary>
internal static class CheckerboardScaling
{
    // A board measured over several squares, on unknown paper (common practice, no source).
    private const double SquareRelative = 0.001;

    // A sheet of 80 g/m² is 0.1 mm thick (common practice, no source); things lie that much lower once it has been taken away.
    private const double BoardThicknessMm = 0.1;

    // How far beyond its outermost corners the board itself reaches, in squares.
    private const double RimSquares = 1.2;

    /// <summary>Finds the scale.</summary>
    public static Result<ImageScale> Find(Photo photo, string path, CheckerboardScale board, LensPrior lens)
    {
        if (board.PosePhoto is not { } posePath)
        {
            return Find(photo, path, board.SquareMm, lens);
        }

        if (!Photo.Read(posePath).TryGet(out var pose, out var problem))
        {
            return problem;
        }

        using (pose)
        {
            if (pose.Colour.Size() != photo.Colour.Size() || pose.QuarterTurns != photo.QuarterTurns)
            {
                return ScaleProblems.OtherSize(path, pose.Facts.File);
            }

            return Find(pose, posePath, board.SquareMm, lens).Then<ImageScale>(scale => scale with
            {
                Covered = [],
                Deviations = [.. scale.Deviations, new("board taken away", [FartherBy(scale.Camera, BoardThicknessMm)], IsAssumed: true)],
                Cautions =
                [
                    .. scale.Cautions,
                    $"The scale comes from {pose.Facts.File}: it holds only if neither camera, zoom nor focus was touched in between. Use a stand and the self-timer.",
                ],
            });
        }
    }

    private static Result<ImageScale> Find(Photo photo, string path, double squareMm, LensPrior lens)
    {
        if (!CheckerboardFinder.Find(photo.Grey, squareMm, photo.QuarterTurns, path).TryGet(out var board, out var problem)
            || !CameraFinder.Find(board.Points, "checkerboard", lens, path).TryGet(out var found, out problem))
        {
            return problem;
        }

        var scale = ImageScale.Fitted(
            found.Fit, new("checkerboard", found.Corners, board.Columns * board.Rows, found.Fit.RmsPx, 1, 1),
            new("square size", SquareRelative, SquareRelative, IsShared: true, IsAssumed: true));
        return scale with
        {
            Covered = [Outer(board, squareMm)],
            Cautions = ["The checkerboard's squares are taken to be as large as told, to 0.1 %. Measure over as many of them as a calliper spans and divide."],
        };
    }

    private static TargetPoint[] Outer(CheckerboardSighting board, double squareMm)
    {
        var rim = RimSquares * squareMm;
        var (left, right) = (board.Points.Min(p => p.Target.XMm) - rim, board.Points.Max(p => p.Target.XMm) + rim);
        var (top, bottom) = (board.Points.Min(p => p.Target.YMm) - rim, board.Points.Max(p => p.Target.YMm) + rim);
        return [new(left, top), new(right, top), new(right, bottom), new(left, bottom)];
    }

    /// <summary>The camera over a plane that lies lower than the one it was fitted to.</summary>
    private static Camera FartherBy(Camera camera, double mm)
    {
        var (r, pose) = (camera.Pose.RotationMatrix(), camera.Pose);
        return new(camera.Lens, pose with
        {
            TranslationXMm = pose.TranslationXMm + (r[2] * mm),
            TranslationYMm = pose.TranslationYMm + (r[5] * mm),
            TranslationZMm = pose.TranslationZMm + (r[8] * mm),
        });
    }
}
