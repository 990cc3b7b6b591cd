using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Outlines;

/// <summary>An entity of a DXF file with all its groups.</summary>
internal sealed class DxfEntity(string kind, int line)
{
    public string Kind { get; } = kind;

    public int Line { get; } = line;

    public List<DxfGroup> Groups { get; } = [];

    /// <summary>The vertices that follow a POLYLINE.</summary>
    public List<DxfEntity> Vertices { get; } = [];

    public string Layer => Groups.FirstOrDefault(group => group.Code == 8).Value ?? string.Empty;

    /// <summary>The flags of group 70.</summary>
    public int Flags => Whole(70);

    public double? Find(int code)
    {
        foreach (var group in Groups)
        {
            if (group.Code == code)
            {
                return group.Number;
            }
        }

        return null;
    }

    public double Number(int code, double usual = 0) => Find(code) ?? usual;

    public int Whole(int code) => Groups.FirstOrDefault(group => group.Code == code) is { Value: not null } found ? found.Whole ?? 0 : 0;

    /// <summary>The point at a code and the code 10 above it, or null.</summary>
    public SectionPoint? Point(int code) => Find(code) is { } x && Find(code + 10) is { } y ? new(x, y) : null;

    public IReadOnlyList<double> Numbers(int code) => [.. Groups.Where(group => group.Code == code).Select(group => group.Number ?? double.NaN)];
}
