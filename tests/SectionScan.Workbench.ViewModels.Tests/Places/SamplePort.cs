using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

/// <summary>A job whose sections are the true polygons of the sample photos' job (sample-images/truth): as cast, exemplar and finished,
/// stations 1 to 8; no photo is digitised for it.</summary>
internal static class SamplePort
{
    private static readonly (string Stage, string[] Photos)[] Ports =
        [("as cast", ["p04", "p05"]), ("exemplar", ["p01", "p02"]), ("finished", ["p06", "p07"])];

    public static JobViewModel WindowOn(Shop shop)
    {
        var window = shop.WindowOnNewJob();
        var live = window.Live!;
        var (photos, sections) = (new List<JobPhoto>(), new List<JobSection>());
        foreach (var (stage, names) in Ports)
        {
            foreach (var name in names)
            {
                var photo = new JobPhoto(name, name + ".jpg", name + ".jpg", 4032, 3024, 0) { Stage = stage };
                photos.Add(photo);
                foreach (var truth in SamplePhotos.TruthOf(name).Sections)
                {
                    var document = new SectionDocument(
                        new(truth.Station, SectionSubject.Mould, 0, Outline.From(truth.Outline).ValueOrThrow(), [new("edge, test", [new NormalOffsetEffect(0.02)])], []),
                        null, [], null, null, null, new Dictionary<string, string>(), "truth");
                    var section = new JobSection($"{name}-{truth.Station}", name, string.Empty, truth.Station);
                    sections.Add(JobCorrections.Keep(live.Folder, section, document).ValueOrThrow() with { Corrections = 0 });
                }
            }
        }

        live.Do("Set up", job => job with { Photos = photos, Sections = sections, Head = "Bramble 480 twin" });
        return window;
    }

    public static JobViewModel WithTarget(Shop shop)
    {
        var window = WindowOn(shop);
        window.Live!.Do("Set up", job => job with { Target = new() { Own = JobPorts.KeyOf("as cast"), Reference = JobPorts.KeyOf("exemplar") } });
        return window;
    }
}
