using OpenCvSharp;
using OpenCvSharp.Aruco;
using SectionScan.Drawings.Targets;

namespace SectionScan.Drawings.Tests.Targets;

public sealed class MarkerFamilyTests
{
    public static TheoryData<string, PredefinedDictionaryType, int> Families => new()
    {
        { "DICT_5X5_100", PredefinedDictionaryType.Dict5X5_100, 58 },
        { "DICT_4X4_50", PredefinedDictionaryType.Dict4X4_50, 20 },
        { "DICT_APRILTAG_36h11", PredefinedDictionaryType.DictAprilTag_36h11, 35 },
    };

    [Theory]
    [MemberData(nameof(Families))]
    public void Every_cell_of_every_marker_is_as_in_OpenCV(string name, PredefinedDictionaryType type, int count)
    {
        var family = new[] { MarkerFamily.Sheet, MarkerFamily.Card, MarkerFamily.StationTags }.Single(f => f.Name == name);
        using var dictionary = CvAruco.GetPredefinedDictionary(type);

        Assert.Equal(count, family.Count);
        for (var id = 0; id < count; id++)
        {
            using var drawn = new Mat();
            dictionary.GenerateImageMarker(id, family.BitsAcross + 2, drawn, 1);
            var black = family.BlackCells(id);
            var across = drawn.Cols;
            Assert.Equal(black.GetLength(0), across);
            for (var row = 0; row < across; row++)
            {
                for (var column = 0; column < across; column++)
                {
                    Assert.Equal(drawn.At<byte>(row, column) == 0, black[row, column]);
                }
            }
        }
    }

    [Theory]
    [InlineData(-1, 0, 0)]
    [InlineData(35, 0, 0)]
    [InlineData(0, 6, 0)]
    [InlineData(0, 0, -1)]
    public void A_cell_that_does_not_exist_is_refused(int id, int row, int column)
        => Assert.Throws<ArgumentOutOfRangeException>(() => MarkerFamily.StationTags.IsWhite(id, row, column));
}
