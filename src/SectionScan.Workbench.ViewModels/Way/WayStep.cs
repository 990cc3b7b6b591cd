using SectionScan.Jobs.PortingJobs;

namespace SectionScan.Workbench.ViewModels.Way;

/// <summary>One place on the way through a job, and how it stands.</summary>
/// <param name="Place">The place.</param>
/// <param name="Word">Its name.</param>
/// <param name="State">Done, next or to come.</param>
/// <param name="Standing">What is done there and what is not, in a few words.</param>
public sealed record WayStep(Place Place, string Word, WayState State, string Standing)
{
    /// <summary>The word in its address.</summary>
    public string Path => Word.ToLowerInvariant();

    /// <summary>The whole way of a job. The first place that is not done is next.</summary>
    public static IReadOnlyList<WayStep> Of(PortingJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        var standings = Enum.GetValues<Place>().Select(place => (Place: place, Standing: StandingOf(place, job))).ToList();
        var next = standings.FindIndex(each => !each.Standing.IsDone);
        return [.. standings.Select((each, i) => new WayStep(
            each.Place, each.Place.ToString(),
            each.Standing.IsDone ? WayState.Done : i == next ? WayState.Next : WayState.ToCome,
            each.Standing.Words))];
    }

    private static (bool IsDone, string Words) StandingOf(Place place, PortingJob job)
    {
        var digitised = job.Photos.Count(photo => photo.IsDigitised);
        return place switch
        {
            Place.Prepare => (job.PrintRatio() is not null, job.PrintRatio() is null ? "print not checked"
                : job.LensFile is null ? "print checked" : "print checked, lens known"),
            Place.Capture => (job.Photos.Count > 0, Count(job.Photos.Count, "photo")),
            Place.Digitise => (job.Photos.Count > 0 && digitised == job.Photos.Count, digitised < job.Photos.Count
                ? FormattableString.Invariant($"{digitised} of {Count(job.Photos.Count, "photo")}")
                : Count(job.Sections.Count, "section")),
            Place.Compare => (job.Comparison is { Reference: not null, Measured: not null },
                job.Comparison is { Reference: not null, Measured: not null } ? "two sections chosen" : "nothing chosen"),
            Place.Decide => (job.Target.IsChosen, job.Target.IsChosen
                ? $"{JobPorts.NameOf(job.Target.Own!)} toward {JobPorts.NameOf(job.Target.Reference!)}" : "no ports chosen"),
            Place.Cut => (job.Target.IsChosen && job.Proof.Finished is not null, job.Target.IsChosen ? "plan and templates ready" : string.Empty),
            Place.Prove => (job.Proof.Finished is not null, job.Proof.Finished is { } finished ? $"{JobPorts.NameOf(finished)} proved" : string.Empty),
            _ => (false, string.Empty),
        };
    }

    private static string Count(int count, string what) =>
        count == 0 ? $"no {what} yet" : FormattableString.Invariant($"{count} {what}{(count == 1 ? string.Empty : "s")}");
}
