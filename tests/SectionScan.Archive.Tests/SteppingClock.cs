namespace SectionScan.Archive.Tests;

/// <summary>A clock that moves on by one second each time it is asked; first answer 2025-05-01 10:00:01 UTC.</summary>
public sealed class SteppingClock : TimeProvider
{
    private DateTimeOffset now = new(2025, 5, 1, 10, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => now = now.AddSeconds(1);
}
