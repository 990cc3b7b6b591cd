using System.Globalization;
using System.Text;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Quantities;
using SectionScan.Testing.Accuracy;
using SectionScan.Testing.Rendering;
using SectionScan.Testing.Shapes;

namespace SectionScan.Testing.Gauges;

/// <summary>Rendered photos of plugs of known size on the sheet, of three megapixels, and the table of a study of them.</summary>
public sealed class PlugPhotos : IDisposable
{
    private const double ThicknessMm = 6;

    // All photos are taken with one lens.
    private static readonly Lens Phone = new(1571, 1571, 1008, 756, 0, 0, 0, 0, 0);

    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-plugs-").FullName;
    private readonly StringBuilder table = new("photo,plug,shape,width_mm,height_mm,thickness_mm,u_mm,person,camera,sheet\n");

    /// <summary>The four shapes, each of another size.</summary>
    public static IReadOnlyList<Plug> FourShapes { get; } =
    [
        new("ring 20", PlugShape.Circle, 20, 20, 0.002), new("slot 36", PlugShape.Stadium, 36, 24, 0.002),
        new("square 30", PlugShape.Square, 30, 30, 0.002), new("block 50", PlugShape.Rectangle, 50, 30, 0.002),
    ];

    /// <summary>The folder of photos and table.</summary>
    public string Folder => folder;

    /// <summary>The lens's profile.</summary>
    public static LensProfile Profile { get; } = SceneLens.ProfileOf(Bare(new(Phone, CameraPlacing.LookAt(130, 90, 260, 0, 0, 0)), 0));

    /// <summary>Printed length over true length of the sheet, for what is taken from now on.</summary>
    public double PrintRatio { get; set; } = 1;

    /// <summary>Takes a photo of plugs side by side (one, as a rule) and gives its path.</summary>
    /// <param name="name">The file's name.</param>
    /// <param name="seed">Sets camera, place, turn and noise.</param>
    /// <param name="plugs">What lies there.</param>
    public string Take(string name, int seed, params IReadOnlyList<Plug> plugs)
    {
        ArgumentNullException.ThrowIfNull(plugs);
        var random = new Random(seed);
        double Within(double from, double to) => from + ((to - from) * random.NextDouble());
        var camera = new Camera(
            Phone, CameraPlacing.LookAt(130, 90, Within(255, 270), Within(8, 14), Within(0, 360), Within(-4, 4)));
        var scene = Bare(camera, seed) with
        {
            Slices = [.. plugs.Select((plug, i) => new SceneSlice(
                null, OutlineOf(plug), new(new(130 + ((i - ((plugs.Count - 1) / 2.0)) * 62) + Within(-4, 4), 90 + Within(-4, 4)), Angle.FromDegrees(Within(-180, 180))),
                ThicknessMm, SliceMaterial.Blue))],
            PrintRatioX = PrintRatio,
            PrintRatioY = PrintRatio,
        };
        return PhotoRenderer.Render(scene).SaveTo(folder, name);
    }

    /// <summary>Takes photos of each plug by each person and enters them in the table.</summary>
    /// <param name="plugs">The plugs.</param>
    /// <param name="persons">The persons.</param>
    /// <param name="repeats">Photos of each plug by each person.</param>
    public PlugPhotos Study(IReadOnlyList<Plug> plugs, IReadOnlyList<string> persons, int repeats)
    {
        ArgumentNullException.ThrowIfNull(plugs);
        ArgumentNullException.ThrowIfNull(persons);
        var seed = 0;
        foreach (var plug in plugs)
        {
            foreach (var person in persons)
            {
                for (var repeat = 1; repeat <= repeats; repeat++)
                {
                    var name = $"{plug.Name.Replace(' ', '-')}-{person}-{repeat}.jpg";
                    Take(name, ++seed, plug);
                    Enter(name, plug, person);
                }
            }
        }

        return this;
    }

    /// <summary>Enters a photo in the table.</summary>
    public void Enter(string photo, Plug plug, string person)
    {
        ArgumentNullException.ThrowIfNull(plug);
        var height = plug.Shape is PlugShape.Stadium or PlugShape.Rectangle ? plug.HeightMm.ToString(CultureInfo.InvariantCulture) : "";
        table.Append(
            CultureInfo.InvariantCulture,
            $"{photo},{plug.Name},{plug.Shape.ToString().ToLowerInvariant()},{plug.WidthMm},{height},{ThicknessMm},{plug.StandardUncertaintyMm},{person},phone,A\n");
    }

    /// <summary>Writes the table as it is now and gives its path.</summary>
    /// <param name="change">What to change in it first.</param>
    public string Table(Func<string, string>? change = null)
    {
        var path = Path.Combine(folder, FormattableString.Invariant($"study-{Directory.GetFiles(folder, "*.csv").Length + 1}.csv"));
        File.WriteAllText(path, change is null ? table.ToString() : change(table.ToString()));
        return path;
    }

    /// <inheritdoc />
    public void Dispose() => Directory.Delete(folder, recursive: true);

    private static PhotoScene Bare(Camera camera, int seed) => new(SceneTarget.Sheet, camera, 2016, 1512, seed)
    {
        Label = new("Example", "Example phone", 28, "2025:06:14 10:30:00"),
    };

    private static SectionPoint[] OutlineOf(Plug plug) => (plug.Shape switch
    {
        PlugShape.Circle => AnalyticShapes.Circle(plug.WidthMm / 2),
        PlugShape.Stadium => AnalyticShapes.Stadium(plug.HeightMm / 2, plug.WidthMm - plug.HeightMm),
        _ => AnalyticShapes.Rectangle(plug.WidthMm, plug.HeightMm),
    }).Points.ToArray();
}
