using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using OpenCvSharp;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Tests.Templates;

/// <summary>A page as others draw it: its PDF by poppler, its SVG by Chromium; and where the ink of a line begins.</summary>
internal sealed class PrintedInk : IDisposable
{
    private const double PointsDpi = 1200;
    private const int BrowserScale = 6;

    private readonly Mat pixels;
    private readonly double pixelsPerMm;

    private PrintedInk(Mat pixels, double pixelsPerMm) => (this.pixels, this.pixelsPerMm) = (pixels, pixelsPerMm);

    public static PrintedInk OfPdf(Page page) => Drawn("page.pdf", file => PdfWriter.Write([page], file), PointsDpi / 25.4, (source, picture) =>
        Run("pdftoppm", "-r", PointsDpi.ToString(CultureInfo.InvariantCulture), "-gray", "-png", "-singlefile", source, picture[..^".png".Length]));

    /// <summary>CSS has 96 pixels to the inch, each drawn as 6 × 6.</summary>
    public static PrintedInk OfSvg(Page page) => Drawn("page.svg", file => SvgWriter.Write(page, file), BrowserScale * 96 / 25.4, (source, picture) =>
        Run(
            "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", $"--user-data-dir={Path.GetDirectoryName(source)}",
            $"--force-device-scale-factor={BrowserScale}",
            string.Create(CultureInfo.InvariantCulture, $"--window-size={Math.Ceiling(page.WidthMm * 96 / 25.4)},{Math.Ceiling(page.HeightMm * 96 / 25.4)}"),
            $"--screenshot={picture}", new Uri(source).AbsoluteUri));

    /// <summary>How far along a direction from a place the ink begins, mm; the ink's half level counts.</summary>
    /// <param name="place">The place on the page, mm.</param>
    /// <param name="x">x of the unit vector, page frame (y down).</param>
    /// <param name="y">y of the unit vector.</param>
    /// <param name="reachMm">How far to look to either side.</param>
    /// <returns>The length, or NaN when no ink is there.</returns>
    public double InkBegins(PagePoint place, double x, double y, double reachMm = 0.4)
    {
        const double StepMm = 0.004;
        var levels = new List<double>();
        for (var along = -reachMm; along <= reachMm; along += StepMm)
        {
            levels.Add(Ink((place.XMm + (along * x)) * pixelsPerMm, (place.YMm + (along * y)) * pixelsPerMm));
        }

        var half = levels.Max() / 2;
        return half < 40 ? double.NaN : (levels.FindIndex(level => level >= half) * StepMm) - reachMm;
    }

    public void Dispose() => pixels.Dispose();

    private static PrintedInk Drawn(string name, Action<Stream> write, double pixelsPerMm, Action<string, string> draw)
    {
        var folder = Directory.CreateTempSubdirectory("sectionscan-template-");
        try
        {
            var (source, picture) = (Path.Combine(folder.FullName, name), Path.Combine(folder.FullName, "picture.png"));
            using (var file = File.Create(source))
            {
                write(file);
            }

            draw(source, picture);
            return new(Cv2.ImRead(picture, ImreadModes.Grayscale), pixelsPerMm);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    // Between the middles of four pixels; a pixel's middle lies half a pixel from its corner.
    private double Ink(double xPx, double yPx)
    {
        var (column, row) = (Math.Floor(xPx - 0.5), Math.Floor(yPx - 0.5));
        var (right, below) = (xPx - 0.5 - column, yPx - 0.5 - row);
        double At(double dx, double dy) => 255 - pixels.At<byte>((int)(row + dy), (int)(column + dx));
        return ((1 - below) * (((1 - right) * At(0, 0)) + (right * At(1, 0)))) + (below * (((1 - right) * At(0, 1)) + (right * At(1, 1))));
    }

    private static void Run(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true })!;
            var error = process.StandardError.ReadToEndAsync();
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, error.Result);
        }
        catch (Win32Exception)
        {
            Assert.Fail($"{program} is missing. src/system-packages.sh --tests brings it.");
        }
    }
}
