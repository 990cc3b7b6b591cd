using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Corrections;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;

namespace SectionScan.Porting.Tests.Corrections;

public class HandCorrectingTests
{
    private const double RadiusMm = 20;
    private const double HandMm = 0.08;

    [Fact]
    public void A_bubble_left_out_of_a_circle_leaves_the_circle()
    {
        // A notch of 1 mm at the right, 4 mm wide.
        var notched = Document(angle => RadiusMm - Math.Max(0, 1 - Math.Pow(RadiusMm * angle / 2, 2)));

        var mended = HandCorrecting.ExcludeBubble(notched, new(19.5, 0), 3, HandMm).ValueOrThrow();

        // The mended centroid is the circle's; a cubic over an arc of 6 mm leaves a circle of 20 mm by less than 0.01 mm.
        Assert.All(mended.Section.Outline.Points.ToArray(), p => Assert.InRange(p.DistanceTo(default), RadiusMm - 0.02, RadiusMm + 0.02));
        Assert.InRange(Area(mended).Value / (Math.PI * RadiusMm * RadiusMm), 0.9995, 1.0005);
    }

    [Fact]
    public void A_moved_point_takes_its_neighbours_along_and_leaves_the_rest()
    {
        var before = Document(_ => RadiusMm);

        var moved = HandCorrecting.MovePoint(before, new(RadiusMm, 0), new(RadiusMm + 0.5, 0), 4, HandMm).ValueOrThrow();

        // Compared on the paper, where the frame's own origin does not matter.
        var (was, now) = (before.PlacedOutline, moved.PlacedOutline);
        Assert.InRange(now.Max(p => p.XMm) - was.Max(p => p.XMm), 0.48, 0.51);
        Assert.All(now.Where(p => p.DistanceTo(new(120, 60)) > 5), p => Assert.InRange(was.Min(q => q.DistanceTo(p)), 0, 0.1));

        // A bump h·(1 − (s/r)²)² along r on both sides encloses 16/15·h·r (integrated by hand).
        Assert.InRange(Area(moved).Value - Area(before).Value, (16.0 / 15 * 0.5 * 4) - 0.06, (16.0 / 15 * 0.5 * 4) + 0.06);
    }

    [Fact]
    public void A_redrawn_stretch_goes_through_the_places_whichever_way_they_are_given()
    {
        var before = Document(_ => RadiusMm);
        SectionPoint[] path = [At(-20), At(-8, 0.3), At(8, 0.3), At(20)];

        foreach (var given in new[] { path, path.Reverse().ToArray() })
        {
            var redrawn = HandCorrecting.RedrawStretch(before, given, HandMm).ValueOrThrow();

            Assert.All(path, p => Assert.InRange(redrawn.PlacedOutline.Min(q => q.DistanceTo(before.Placement!.ToTarget(p))), 0, 0.1));
            Assert.Equal("redraw-stretch", Assert.Single(redrawn.Corrections).Kind);
            Assert.Equal(before.Section.Outline.Count, redrawn.Section.Outline.Count);
        }
    }

    [Fact]
    public void Each_correction_widens_the_uncertainty_by_the_hand_and_by_what_it_moved()
    {
        var before = Document(_ => RadiusMm);

        var small = HandCorrecting.MovePoint(before, new(RadiusMm, 0), new(RadiusMm + 0.1, 0), 4, HandMm).ValueOrThrow();
        var large = HandCorrecting.MovePoint(before, new(RadiusMm, 0), new(RadiusMm + 1, 0), 4, HandMm).ValueOrThrow();
        var twice = HandCorrecting.MovePoint(small, new(-RadiusMm, 0), new(-RadiusMm - 0.1, 0), 4, HandMm).ValueOrThrow();

        Assert.Equal(Math.Sqrt((HandMm * HandMm) + (0.1 * 0.1 / 12)), small.Corrections[0].StandardUncertainty, 6);
        Assert.True(Area(before).StandardUncertainty < Area(small).StandardUncertainty);
        Assert.True(Area(small).StandardUncertainty < Area(large).StandardUncertainty);
        Assert.True(Area(small).StandardUncertainty < Area(twice).StandardUncertainty);
        Assert.Equal(2, twice.Section.ErrorSources.Single(each => each.Name == HandCorrecting.SourceName).Effects.Count);
    }

    [Fact]
    public void Turning_up_by_a_quarter_exchanges_width_and_height_and_leaves_the_slice_where_it_lies()
    {
        var before = Document(angle => 14 * 20 / Math.Sqrt(Math.Pow(14 * Math.Cos(angle), 2) + Math.Pow(20 * Math.Sin(angle), 2)));

        var turned = HandCorrecting.TurnUp(before, Angle.FromDegrees(90)).ValueOrThrow();

        Assert.Equal(MeasureCatalogue.Width.Of(before.Section.Outline), MeasureCatalogue.Height.Of(turned.Section.Outline), 3);
        Assert.Equal(MeasureCatalogue.Height.Of(before.Section.Outline), MeasureCatalogue.Width.Of(turned.Section.Outline), 3);
        Assert.All(turned.Section.Outline.Points.ToArray().Zip(turned.PlacedOutline), pair =>
            Assert.InRange(turned.Placement!.ToTarget(pair.First).DistanceTo(pair.Second), 0, 0.001));
        var facing = turned.Section.ErrorSources.SelectMany(each => each.Effects).OfType<FacingOffsetEffect>().Single();
        Assert.Equal(0, facing.DirectionX, 9);
        Assert.Equal(-1, facing.DirectionY, 9);
    }

    [Fact]
    public void A_mould_that_shrank_stays_as_much_larger_than_what_lay_on_the_paper()
    {
        var flat = Document(_ => RadiusMm);
        var enlarged = flat with { Section = flat.Section with { Outline = flat.Section.Outline.Scaled(1.004) } };

        var moved = HandCorrecting.MovePoint(enlarged, new(RadiusMm * 1.004, 0), new(RadiusMm * 1.02, 0), 4, HandMm).ValueOrThrow();

        Assert.Equal(1.004, HandCorrecting.Enlargement(moved), 4);
    }

    [Fact]
    public void What_cannot_be_corrected_says_why()
    {
        var document = Document(_ => RadiusMm);

        Assert.Equal("correction-far-from-outline", Code(HandCorrecting.MovePoint(document, default, new(1, 0), 4, HandMm)));
        Assert.Equal("correction-far-from-outline", Code(HandCorrecting.ExcludeBubble(document, default, 1, HandMm)));
        Assert.Equal("correction-too-few-places", Code(HandCorrecting.RedrawStretch(document, [At(0)], HandMm)));
        Assert.Equal("correction-too-long", Code(HandCorrecting.ExcludeBubble(document, new(RadiusMm, 0), 39, HandMm)));
        Assert.Equal("correction-without-photo", Code(HandCorrecting.TurnUp(document with { Placement = null }, Angle.FromDegrees(1))));
        Assert.Equal("outline-crosses-itself", Code(HandCorrecting.MovePoint(document, new(RadiusMm, 0), new(-2 * RadiusMm, 0), 4, HandMm)));
    }

    [Fact]
    public void Corrections_stand_in_the_document_and_a_document_without_them_is_written_as_ever()
    {
        var before = Document(_ => RadiusMm);
        Assert.DoesNotContain("corrections", SectionDocumentFormat.Write(before), StringComparison.Ordinal);

        var corrected = HandCorrecting.SetStation(HandCorrecting.MovePoint(before, At(30), At(30, 0.2), 4, HandMm).ValueOrThrow(), 7).ValueOrThrow();
        var text = SectionDocumentFormat.Write(corrected);
        var read = SectionDocumentFormat.Read(text, "test").ValueOrThrow();

        Assert.Equal(corrected.Corrections, read.Corrections);
        Assert.Equal(7, read.Section.Station);
        Assert.Equal(text, SectionDocumentFormat.Write(read));
    }

    private static string Code<T>(Metrology.Results.Result<T> result)
        where T : notnull => result.TryGet(out _, out var problem) ? "none" : problem.Code;

    private static SectionPoint At(double degrees, double beyondMm = 0)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new((RadiusMm + beyondMm) * cos, (RadiusMm + beyondMm) * sin);
    }

    private static Estimate Area(SectionDocument document) =>
        MeasuredOutline.Of(document.Section.Outline, document.Section.ErrorSources)[MeasureCatalogue.Area].Estimate;

    /// <summary>A section whose radius is a function of the direction, lying upright at (100, 60) on the paper.</summary>
    private static SectionDocument Document(Func<double, double> radiusMm)
    {
        const int Points = 1000;
        var rough = Outline.From(Enumerable.Range(0, Points).Select(i =>
        {
            var angle = (2 * Math.PI * i / Points) - Math.PI;
            var (sin, cos) = Math.SinCos(angle);
            return new SectionPoint(radiusMm(angle) * cos, radiusMm(angle) * sin);
        })).ValueOrThrow();
        var centroid = PolygonMoments.Of(rough.Points).Centroid;
        var outline = rough.Moved(-centroid.XMm, -centroid.YMm);
        var placement = new SectionPlacement(new(100 + centroid.XMm, 60 - centroid.YMm), default);
        return new SectionDocument(
            new(3, SectionSubject.Mould, 6, outline, [new("wall", [new FacingOffsetEffect(0.02, 1, 0)])], []),
            placement, [.. outline.Points.ToArray().Select(placement.ToTarget)], new("photo-1.jpg", "00", 4000, 3000, null, null), null, null,
            new Dictionary<string, string>(), "test").Rounded().ValueOrThrow();
    }
}
