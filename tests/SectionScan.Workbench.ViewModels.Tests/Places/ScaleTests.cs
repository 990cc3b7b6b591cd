using System.Buffers.Binary;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

/// <summary>A dark disc on grey paper, seen square on at 5 pixels for each millimetre. The area of a disc is π·r².</summary>
public sealed class ScaleTests : IDisposable
{
    private const double RadiusMm = 16;
    private const double DiscMm2 = Math.PI * RadiusMm * RadiusMm;
    private const int PxPerMm = 5;

    private readonly Shop shop = new();
    private readonly JobViewModel window;
    private readonly DigitiseViewModel digitise;
    private readonly CorrectViewModel correct;
    private readonly ScaleViewModel scale;

    public ScaleTests()
    {
        window = shop.WindowOnNewJob();
        digitise = new(window);
        correct = new(window, digitise);
        scale = new(window, digitise, correct);
    }

    public void Dispose()
    {
        scale.Dispose();
        correct.Dispose();
        digitise.Dispose();
        shop.Dispose();
    }

    [Fact]
    public async Task Two_points_picked_on_the_photo_give_the_scale_and_can_be_taken_back()
    {
        await TakeDiscAsync();
        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);
        Assert.NotNull(digitise.Photo!.Problem);

        scale.TakeCommand.Execute(ScaleTool.TwoPoints);
        scale.Pick(100, 700);
        Assert.False(scale.IsPicked);
        scale.Pick(880, 700);
        Assert.True(scale.IsPicked);

        // A third click shifts the nearest place.
        scale.Pick(900, 700);
        Assert.Equal([new(100, 700), new(900, 700)], scale.Picked);
        scale.Width = "160 mm";
        scale.UseCommand.Execute(null);
        Assert.Equal("not-a-number", scale.Problem!.Code);
        scale.Width = "0";
        scale.UseCommand.Execute(null);
        Assert.Equal("length-unlikely", scale.Problem!.Code);
        scale.Width = "160";
        scale.UseCommand.Execute(null);
        Assert.Null(scale.Problem);
        Assert.Equal("Scale from two points 160 mm apart.", scale.InUse);

        await digitise.DigitiseAgainCommand.ExecuteAsync("photo-1");
        Assert.Null(digitise.Photo!.Problem);
        var area = Area();
        Assert.InRange(Math.Abs(area.Value - DiscMm2), 0, area.ExpandedUncertainty);
        var settings = digitise.Measured(digitise.Section!)!.ValueOrThrow().Document.Settings;
        Assert.Equal("100,700,900,700,160", settings["points"]);
        Assert.False(digitise.IsOutOfDate(digitise.Photo));

        scale.UsePrintedCommand.Execute(null);
        Assert.Null(digitise.Photo!.Scale);
        Assert.True(digitise.IsOutOfDate(digitise.Photo));
        window.UndoCommand.Execute(null);
        Assert.NotNull(digitise.Photo!.Scale);
    }

    [Fact]
    public async Task The_corners_of_a_rectangle_are_picked_in_any_order()
    {
        await TakeDiscAsync();
        scale.TakeCommand.Execute(ScaleTool.Rectangle);
        foreach (var (x, y) in new[] { (900, 700), (100, 100), (100, 700), (900, 100) })
        {
            scale.Pick(x, y);
        }

        (scale.Width, scale.Height) = ("160", "120");
        scale.UseCommand.Execute(null);

        Assert.Equal(new PixelPoint[] { new(100, 100), new(900, 100), new(900, 700), new(100, 700) }, window.Job.Photos[0].Scale!.Places);
        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);
        var area = Area();
        Assert.InRange(Math.Abs(area.Value - DiscMm2), 0, area.ExpandedUncertainty);
    }

    [Fact]
    public async Task One_tool_is_in_the_hand_at_a_time_and_picked_places_stay_with_their_photo()
    {
        await TakeDiscAsync();
        await TakeDiscAsync();
        correct.TakeCommand.Execute(CorrectionTool.MovePoint);
        scale.TakeCommand.Execute(ScaleTool.Rectangle);
        Assert.Equal(CorrectionTool.None, correct.Tool);
        scale.Pick(10, 10);

        digitise.ChosenPhoto = "photo-2";
        Assert.Empty(scale.Picked);

        correct.TakeCommand.Execute(CorrectionTool.MovePoint);
        Assert.Equal(ScaleTool.None, scale.Tool);
    }

    [Fact]
    public async Task A_missed_slice_is_pointed_to_and_what_is_not_there_is_told()
    {
        await Shop.TakeAsync(window, "p01");
        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);
        Assert.Equal(4, digitise.Sections.Count);
        scale.TakeCommand.Execute(ScaleTool.MissedSlice);
        var slice = digitise.Displayed(digitise.Sections[0]);

        // One on a slice that is found anyway, one on bare paper just beside its tag's far side.
        scale.Pick(slice.Average(p => p.X), slice.Average(p => p.Y));
        scale.Pick(2016, 1512);
        Assert.Equal(2, scale.Seeds.Count);
        Assert.True(digitise.IsOutOfDate(digitise.Photo!));
        await digitise.DigitiseAgainCommand.ExecuteAsync("photo-1");

        Assert.Equal(4, digitise.Sections.Count);
        Assert.Contains(digitise.Photo!.Warnings, warning => warning.Contains("Nothing stands out", StringComparison.Ordinal));
        Assert.Contains("2016,1512", digitise.Measured(digitise.Section!)!.ValueOrThrow().Document.Settings["seeds"], StringComparison.Ordinal);
        scale.ForgetSeedsCommand.Execute(null);
        Assert.Empty(scale.Seeds);
        window.UndoCommand.Execute(null);
        Assert.Equal(2, scale.Seeds.Count);
    }

    private Estimate Area() => digitise.Measured(digitise.Section!)!.ValueOrThrow().Measures[MeasureCatalogue.Area].Estimate;

    private async Task TakeDiscAsync()
    {
        using var content = new MemoryStream(Disc(1000, 800));
        Assert.True((await window.Live!.TakePhotoAsync(content, "disc.bmp", CancellationToken.None)).IsSuccess);
    }

    /// <summary>An uncompressed bitmap, 24 bits, rows from the bottom up.</summary>
    private static byte[] Disc(int width, int height)
    {
        const int Head = 54;
        var bytes = new byte[Head + (3 * width * height)];
        "BM"u8.CopyTo(bytes);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(2), bytes.Length);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(10), Head);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(14), 40);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(18), width);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(22), height);
        BinaryPrimitives.WriteInt16LittleEndian(bytes.AsSpan(26), 1);
        BinaryPrimitives.WriteInt16LittleEndian(bytes.AsSpan(28), 24);
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                // One pixel of the rim mixes dark and light by how far the disc's edge lies from its middle.
                var inside = Math.Clamp((RadiusMm * PxPerMm) - Math.Sqrt(Square(x - 500) + Square(y - 400)) + 0.5, 0, 1);
                bytes.AsSpan(Head + (3 * ((width * (height - 1 - y)) + x)), 3).Fill((byte)(190 - (140 * inside)));
            }
        }

        return bytes;
    }

    private static double Square(double value) => value * value;
}
