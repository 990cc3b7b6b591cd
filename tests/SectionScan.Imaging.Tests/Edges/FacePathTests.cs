using SectionScan.Imaging.Edges;

namespace SectionScan.Imaging.Tests.Edges;

/// <summary>A cheapest path cannot be bettered at any one place.</summary>
public sealed class FacePathTests
{
    [Theory]
    [InlineData(11, 3)]
    [InlineData(49, 12)]
    public void The_cheapest_path_is_no_dearer_than_any_path_found_by_exchanging_places(int offsets, int mostSteps)
    {
        const int Places = 40;
        const float Penalty = 0.13f;
        var random = new Random(offsets);
        float[] costs = [.. Enumerable.Range(0, Places * offsets).Select(_ => random.NextSingle())];

        var path = FacePath.Cheapest(costs, Places, offsets, Penalty, mostSteps);

        for (var i = 1; i < Places - 1; i++)
        {
            var (before, after) = (path[i - 1], path[i + 1]);
            Assert.InRange(path[i] - before, -mostSteps, mostSteps);
            for (var k = 0; k < offsets; k++)
            {
                var mayStand = Math.Abs(k - before) <= mostSteps && Math.Abs(k - after) <= mostSteps;
                Assert.True(!mayStand || Cost(i, path[i], before, after) <= Cost(i, k, before, after) + 1e-5);
            }
        }

        double Cost(int place, int k, int before, int after) =>
            costs[(place * offsets) + k] + (Penalty * (Math.Abs(k - before) + Math.Abs(k - after)));
    }
}
