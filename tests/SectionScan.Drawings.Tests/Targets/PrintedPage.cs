using System.ComponentModel;
using System.Diagnostics;
using OpenCvSharp;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Tests.Targets;

/// <summary>A page as a printer would put it on paper: its PDF turned into pixels by poppler.</summary>
internal sealed class PrintedPage : IDisposable
{
    public const double PixelsPerMm = 600 / 25.4;

    private PrintedPage(Mat pixels) => Pixels = pixels;

    /// <summary>Grey values, 600 dpi.</summary>
    public Mat Pixels { get; }

    public static PrintedPage Of(Page page)
    {
        var folder = Directory.CreateTempSubdirectory("sectionscan-print-");
        try
        {
            var pdf = Path.Combine(folder.FullName, "page.pdf");
            using (var file = File.Create(pdf))
            {
                PdfWriter.Write([page], file);
            }

            Run("pdftoppm", "-r", "600", "-gray", "-singlefile", pdf, Path.Combine(folder.FullName, "page"));
            return new(Cv2.ImRead(Path.Combine(folder.FullName, "page.pgm"), ImreadModes.Grayscale));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>How many pixels within a rectangle carry ink.</summary>
    public int InkedPixels(double leftMm, double topMm, double widthMm, double heightMm)
    {
        using var part = new Mat(Pixels, Rect.FromLTRB(Px(leftMm), Px(topMm), Px(leftMm + widthMm), Px(topMm + heightMm)));
        using var inked = new Mat();
        Cv2.Threshold(part, inked, 250, 255, ThresholdTypes.BinaryInv);
        return Cv2.CountNonZero(inked);
    }

    /// <summary>The middle of the ink within a rectangle, mm from the page's top-left corner.</summary>
    public (double XMm, double YMm) InkCentre(double leftMm, double topMm, double widthMm, double heightMm)
    {
        var (left, top) = (Px(leftMm), Px(topMm));
        double ink = 0, x = 0, y = 0;
        for (var row = top; row < Px(topMm + heightMm); row++)
        {
            for (var column = left; column < Px(leftMm + widthMm); column++)
            {
                var weight = 255 - Pixels.At<byte>(row, column);
                ink += weight;
                x += weight * (column + 0.5);
                y += weight * (row + 0.5);
            }
        }

        return (x / ink / PixelsPerMm, y / ink / PixelsPerMm);
    }

    public void Dispose() => Pixels.Dispose();

    private static int Px(double mm) => (int)Math.Round(mm * PixelsPerMm);

    private static void Run(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(program, arguments);
            process.WaitForExit();
            Assert.Equal(0, process.ExitCode);
        }
        catch (Win32Exception)
        {
            Assert.Fail($"{program} is missing. Install poppler-utils; .ci/run does so.");
        }
    }
}
