using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Outlines;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Outlines;

/// <summary>Writes bare outlines for drawing programs and spreadsheets.</summary>
/// <param name="Kinds">The kinds of file, of <see cref="KnownKinds"/>.</param>
/// <param name="IsInch">True: the files' unit is the inch.</param>
public sealed record OutlineExport(IReadOnlyList<string> Kinds, bool IsInch)
{
    /// <summary>The kinds that can be written.</summary>
    public static IReadOnlyList<string> KnownKinds { get; } = ["dxf", "svg", "csv"];

    /// <summary>Writes sections into a folder, all of them or none.</summary>
    /// <param name="sections">The sections; of two with one name the second is numbered.</param>
    /// <param name="folder">The folder; made when it is not there.</param>
    /// <returns>The files written.</returns>
    public Result<IReadOnlyList<string>> Write(IReadOnlyList<SectionInput> sections, string folder)
    {
        ArgumentNullException.ThrowIfNull(sections);
        var files = new List<(string Name, Action<Stream> Write)>();
        foreach (var (section, stem) in sections.Zip(FileNames.Unique(sections.Select(section => FileNames.Safe(section.Name)))))
        {
            files.AddRange(Kinds.Select(kind => ($"{stem}.{kind}", (Action<Stream>)(stream => Write(kind, section, stream)))));
        }

        return OutputFolder.Open(folder).Then(open => open.WriteAll(files));
    }

    private void Write(string kind, SectionInput section, Stream stream)
    {
        switch (kind)
        {
            case "dxf":
                DxfWriter.Write([DxfPolyline.Of(section.Outline)], stream, IsInch ? LengthUnit.Inch : LengthUnit.Millimetre);
                break;
            case "svg":
                OutlineSvg.Write(section.Outline, section.Name, IsInch, stream);
                break;
            case "csv":
                OutlineCsv.Write(section.Outline, stream, IsInch);
                break;
            default:
                throw new ArgumentException($"No outline is written as {kind}.", nameof(kind));
        }
    }
}
