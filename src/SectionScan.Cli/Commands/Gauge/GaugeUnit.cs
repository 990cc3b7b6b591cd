using System.Globalization;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Cli.Commands.Gauge;

/// <summary>Lengths of a gauge study as shown: a micrometre, or ten millionths of an inch.</summary>
internal sealed record GaugeUnit(string Name, double PerMm, string SizeFormat, string FineFormat)
{
    public static GaugeUnit Of(bool isInch) => isInch ? new("in", 1 / Inch.Mm, "0.0000", "0.00000") : new("mm", 1, "0.000", "0.000");

    public string Size(double mm) => Text(mm, SizeFormat);

    public string Size(double widthMm, double heightMm) =>
        $"{(widthMm * PerMm).ToString(SizeFormat, CultureInfo.InvariantCulture)} × {Size(heightMm)}";

    public string Fine(double mm) => Text(mm, FineFormat);

    public string Signed(double mm) => Text(mm, $"+{FineFormat};−{FineFormat};{FineFormat}");

    private string Text(double mm, string format) => $"{(mm * PerMm).ToString(format, CultureInfo.InvariantCulture)} {Name}";
}
