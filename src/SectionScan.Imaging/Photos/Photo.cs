using System.Security.Cryptography;
using OpenCvSharp;
using SectionScan.Metrology.Capture;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Photos;

/// <summary>A decoded photo, turned as displayed. Owns native memory.</summary>
internal sealed class Photo : IDisposable
{
    /// <summary>The largest file that is read.</summary>
    public const long MostBytes = 200_000_000;

    private Photo(Mat colour, Mat grey, PhotoFacts facts, double? focal35Mm)
    {
        Colour = colour;
        Grey = grey;
        Facts = facts;
        Focal35Mm = focal35Mm;
    }

    /// <summary>H × W, CV_8UC3, blue-green-red, gamma-coded as stored, turned as displayed.</summary>
    public Mat Colour { get; }

    /// <summary>H × W, CV_8UC1: luma of <see cref="Colour"/> (ITU-R BT.601 weights, as JPEG stores it).</summary>
    public Mat Grey { get; }

    /// <summary>What identifies it.</summary>
    public PhotoFacts Facts { get; }

    /// <summary>EXIF's focal length, 35 mm equivalent, or null.</summary>
    public double? Focal35Mm { get; }

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
            colour = Cv2.ImDecode(bytes, ImreadModes.Color | ImreadModes.IgnoreOrientation);
            if (colour.Empty())
            {
                return PhotoProblems.Damaged(path, "its pixels cannot be decoded");
            }

            Turn(colour, header.Orientation);
            grey = new Mat();
            Cv2.CvtColor(colour, grey, ColorConversionCodes.BGR2GRAY);
            var facts = new PhotoFacts(
                name, Convert.ToHexStringLower(SHA256.HashData(bytes)), colour.Width, colour.Height, header.Camera, header.TakenAt);
            var photo = new Photo(colour, grey, facts, header.Focal35Mm);
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

    /// <summary>Turns the stored pixels as displayed (EXIF 2.32, tag 0112H: orientation).</summary>
    private static void Turn(Mat picture, int orientation)
    {
        switch (orientation)
        {
            case 2: Cv2.Flip(picture, picture, FlipMode.Y); break;
            case 3: Cv2.Rotate(picture, picture, RotateFlags.Rotate180); break;
            case 4: Cv2.Flip(picture, picture, FlipMode.X); break;
            case 5: Cv2.Transpose(picture, picture); break;
            case 6: Cv2.Rotate(picture, picture, RotateFlags.Rotate90Clockwise); break;
            case 7:
                Cv2.Rotate(picture, picture, RotateFlags.Rotate90Clockwise);
                Cv2.Flip(picture, picture, FlipMode.Y);
                break;
            case 8: Cv2.Rotate(picture, picture, RotateFlags.Rotate90Counterclockwise); break;
            default: break;
        }
    }
}
