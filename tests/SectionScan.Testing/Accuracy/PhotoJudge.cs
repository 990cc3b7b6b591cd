using SectionScan.Imaging.Digitising;
using SectionScan.Testing.Truth;

namespace SectionScan.Testing.Accuracy;

/// <summary>Digitises photos whose truth is known and judges what they give.</summary>
public static class PhotoJudge
{
    // Slices lie centimetres apart: an outline whose middle is farther off measures something else.
    private const double SamePlaceMm = 5;

    /// <summary>Digitises a photo and compares each section with the truth.</summary>
    public static PhotoVerdict Judge(string path, PhotoTruth truth, DigitiseSettings settings)
    {
        ArgumentNullException.ThrowIfNull(truth);
        if (!Digitiser.Digitise(path, settings).TryGet(out var photo, out var problem))
        {
            return new(truth.Name, [], truth.Sections, 0, problem, null);
        }

        var found = new List<FoundSection>();
        foreach (var section in photo.Sections)
        {
            if (SectionScoring.Nearest(truth, section.PlacedOutline, SamePlaceMm) is { } there && found.All(f => f.Truth != there))
            {
                // A section whose tag was not read stands by the sheet: its size is judged all the same, its missing station elsewhere.
                var upAsRead = section.Station is null ? there with { TagUp = section.Placement.Up } : there;
                found.Add(new(there, section, SectionScoring.Score(upAsRead, section.Outline.Points.ToArray(), section.PlacedOutline)));
            }
        }

        return new(
            truth.Name,
            [.. truth.Sections.SelectMany(t => found.Where(f => f.Truth == t))],
            [.. truth.Sections.Where(t => found.All(f => f.Truth != t))],
            photo.Sections.Count - found.Count,
            null,
            photo);
    }

    /// <summary>Settings that tell what a careful person knows: the thickness and the print, both as they are.</summary>
    public static DigitiseSettings Told(PhotoTruth truth) => new()
    {
        ThicknessMm = truth?.Sections.Where(s => !s.IsOpening).Select(s => (double?)s.ThicknessMm).FirstOrDefault(),
        PrintRatio = truth is null ? null : (truth.PrintRatioX, truth.PrintRatioY),
    };
}
