namespace SectionScan.Imaging.Edges;

/// <summary>A profile across an edge, ready to be fitted many times.</summary>
internal readonly ref struct EdgeProfile
{
    /// <summary>Takes a profile over.</summary>
    /// <param name="light">The profile.</param>
    /// <param name="fromMm">Its first place.</param>
    /// <param name="room">Where it is kept; as long as <see cref="BlurredSteps.RoomFor"/> says.</param>
    public EdgeProfile(ReadOnlySpan<float> light, double fromMm, Span<double> room)
    {
        double sum = 0, squares = 0;
        for (var k = 0; k < light.Length; k++)
        {
            double value = light[k];
            room[k] = value;
            sum += value;
            squares += value * value;
        }

        room[light.Length..].Clear();
        Values = room;
        (Count, FromMm, Sum, Squares) = (light.Length, fromMm, sum, squares);
    }

    /// <summary>The readings, and zeros up to whole vectors.</summary>
    public ReadOnlySpan<double> Values { get; }

    /// <summary>How many readings.</summary>
    public int Count { get; }

    /// <summary>The first place, mm.</summary>
    public double FromMm { get; }

    /// <summary>The sum of the readings.</summary>
    public double Sum { get; }

    /// <summary>The sum of their squares.</summary>
    public double Squares { get; }
}
