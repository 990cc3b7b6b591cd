using SectionScan.Drawings.Outlines;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.Libraries;

/// <summary>A file that a section can be taken into the library from: a section document, or a drawing of its outline.</summary>
public static class SectionFile
{
    /// <summary>The section document's text and its station.</summary>
    /// <param name="path">A section document, or a DXF, SVG or CSV that states its unit and holds one closed line.</param>
    /// <param name="program">Name and version of the program.</param>
    public static Result<(string Json, int? Station)> Read(string path, string program) => OutlineFile.IsKnown(path)
        ? OutlineImport.AsDrawn(program).Read(path).Then<(string, int?)>(section => (section.ToJson(), section.Document.Section.Station))
        : TextFile.Read(path, SectionDocumentFormat.MaximumBytes).Then(json =>
            SectionDocumentFormat.Read(json, path).Then<(string, int?)>(document => (json, document.Section.Station)));
}
