using System.Security.Cryptography;
using OpenCvSharp;
using SectionScan.Metrology.Capture;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Photos;

/// <summary>A decoded photo, as stored: the lens belongs to the sensor, not to how the phone was held. Owns native memory.</summary>
internal sealed class Photo : IDisposable
{
    /// <summary>The largest file that is read.</summary>
    public const long MostBytes = 200_000_000;

    private Photo(Mat colour, Mat grey, PhotoFacts facts, double? focal35Mm, int quarterTurns)
    {
        Colour = colour;
        Grey = grey;
        Facts = facts;
        Focal35Mm = focal35Mm;
        QuarterTurns = quarterTurns;
    }

    /// <summary>H × W, CV_8UC3, blue-green-red, gamma-coded as stored.</summary>
    public Mat Colour { get; }

    /// <summary>H × W, CV_8UC1: luma of <see cref="Colour"/> (ITU-R BT.601 weights, as JPEG stores it).</summary>
    public Mat Grey { get; }

    /// <summary>What identifies it.</summary>
    public PhotoFacts Facts { get; }

    /// <summary>EXIF's focal length, 35 mm equivalent, or null.</summary>
    public double? Focal35Mm { get; }

    /// <summary>How many quarter turns clockwise make it upright as displayed, 0 to 3.</summary>
    public int QuarterTurns { get; }

    /// <summary>Reads a photo: header first, limits before decoding.</summary>
    public static Result<Photo> Read(string path)
    {
        var name = Path.GetFileName(path.TrimEnd(Path.DirectorySeparatorChar));
        if (Directory.Exists(path))
        {
            return PhotoProblems.IsDirectory(path);
        }

        byte[] bytes;
        try
        {
            var file = new FileInfo(path);
            if (!file.Exists)
            {
                return PhotoProblems.NotFound(path);
            }

            if (file.Length > MostBytes)
            {
                return PhotoProblems.FileTooLarge(path, file.Length, MostBytes);
            }

            bytes = File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return PhotoProblems.Unreadable(path, e.Message);
        }

        return PhotoHeader.Read(bytes, path).Then(header => Decode(bytes, header, name, path));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Colour.Dispose();
        Grey.Dispose();
    }

    private static Result<Photo> Decode(byte[] bytes, PhotoHeader header, string name, string path)
    {
        if (JpegEnd.IsMissing(bytes))
        {
            return PhotoProblems.Damaged(path, "the end of the file is missing");
        }

        Mat? colour = null;
        Mat? grey = null;
        try
        {
            if (ForeignFormat.IsHeif(bytes) || ForeignFormat.IsDng(bytes))
            {
                if (!PhonePicture.Decode(bytes, ForeignFormat.IsDng(bytes), path).TryGet(out colour, out var problem))
                {
                    return problem;
                }
            }
            else
            {
                colour = Cv2.ImDecode(bytes, ImreadModes.Color | ImreadModes.IgnoreOrientation);
            }

            if (colour.Empty())
            {
                return PhotoProblems.Damaged(path, "its pixels cannot be decoded");
            }

            var turns = Unmirror(colour, header.Orientation);
            grey = new Mat();
            Cv2.CvtColor(colour, grey, ColorConversionCodes.BGR2GRAY);
            var (width, height) = turns % 2 == 0 ? (colour.Width, colour.Height) : (colour.Height, colour.Width);
            var facts = new PhotoFacts(
                name, Convert.ToHexStringLower(SHA256.HashData(bytes)), width, height, header.Camera, header.TakenAt);
            var photo = new Photo(colour, grey, facts, header.Focal35Mm, turns);
            (colour, grey) = (null, null);
            return photo;
        }
        catch (OpenCVException e)
        {
            return PhotoProblems.Damaged(path, e.ErrMsg);
        }
        finally
        {
            colour?.Dispose();
            grey?.Dispose();
        }
    }

    /// <summary>Undoes a mirror image (a mirrored marker is none) and tells the quarter turns that are left to the display
    /// (EXIF 2.32, tag 0112H: orientation).</summary>
    private static int Unmirror(Mat picture, int orientation)
    {
        if (orientation is 2 or 4 or 5 or 7)
        {
            Cv2.Flip(picture, picture, FlipMode.Y);
        }

        return orientation switch
        {
            3 or 4 => 2,
            6 or 7 => 1,
            5 or 8 => 3,
            _ => 0,
        };
    }
}
