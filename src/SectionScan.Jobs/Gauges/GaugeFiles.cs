using SectionScan.Jobs.Files;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.Gauges;

/// <summary>Gauge studies as files.</summary>
public static class GaugeFiles
{
    /// <summary>Reads a study.</summary>
    public static Result<GaugeStudy> Read(string path) =>
        TextFile.Read(path, GaugeStudyFormat.MaximumBytes).Then(text => GaugeStudyFormat.Read(text, path));

    /// <summary>Writes a study, whole or not at all.</summary>
    public static Result<string> Write(GaugeStudy study, string path) => OutputFolder.WriteFile(path, GaugeStudyFormat.Write(study));
}
