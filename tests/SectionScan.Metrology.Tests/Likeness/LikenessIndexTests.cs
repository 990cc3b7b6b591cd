using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Likeness;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Tests.Likeness;

public class LikenessIndexTests
{
    public static TheoryData<bool, bool, bool> Freedoms()
    {
        var data = new TheoryData<bool, bool, bool>();
        for (var i = 0; i < 8; i++)
        {
            data.Add((i & 1) != 0, (i & 2) != 0, (i & 4) != 0);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Freedoms))]
    public void The_index_finds_what_comparing_one_by_one_finds(bool mayScale, bool mayMirror, bool mayTurn)
    {
        var freedom = new LikenessFreedom(mayScale, mayMirror, mayTurn);
        var random = new Random(11);
        var index = new LikenessIndex();
        var shapes = Enumerable.Range(0, 400).ToDictionary(i => (long)i, _ => ShapeDescriptor.Of(Shapes.Blob(random, 90)));
        foreach (var (id, shape) in shapes)
        {
            index.Put(id, shape);
        }

        for (var round = 0; round < 8; round++)
        {
            var query = ShapeDescriptor.Of(Shapes.Blob(random, 90));

            var found = index.Nearest(query, 7, freedom);

            var expected = shapes.Select(each => new Neighbour(each.Key, ShapeComparison.Compare(query, each.Value, freedom)))
                .OrderBy(each => each.Likeness.DistanceMm).Take(7);
            Assert.Equal(expected, found);
        }
    }

    [Fact]
    public void A_section_digitised_again_is_found_first_among_many_like_it()
    {
        var random = new Random(12);
        var index = new LikenessIndex();
        var outlines = Enumerable.Range(0, 2000).Select(_ => Shapes.Blob(random, 180)).ToArray();
        for (var i = 0; i < outlines.Length; i++)
        {
            index.Put(i, ShapeDescriptor.Of(outlines[i]));
        }

        const int Queries = 200;
        var first = 0;
        for (var i = 0; i < Queries; i++)
        {
            // Another photo: other start, other corners, turned by up to 15°, scale off by 0.3 %, 0.05 mm of rough edge.
            var again = Again(outlines[i], random);
            var found = index.Nearest(ShapeDescriptor.Of(again), 1, new(MayTurn: true, MayMirror: true));
            first += found[0].Id == i ? 1 : 0;
        }

        Assert.InRange(first, Queries * 99 / 100, Queries);
    }

    [Fact]
    public void What_was_taken_out_is_not_found_and_what_was_replaced_is_found_as_it_is_now()
    {
        var index = new LikenessIndex();
        for (var i = 1; i <= 200; i++)
        {
            index.Put(i, ShapeDescriptor.Of(Shapes.Circle(i)));
        }

        index.Remove(50);
        index.Remove(50);
        index.Remove(200);
        index.Put(20, ShapeDescriptor.Of(Shapes.Circle(50.2)));

        var found = index.Nearest(ShapeDescriptor.Of(Shapes.Circle(50)), 3, new());

        Assert.Equal(198, index.Count);
        Assert.Equal([20L, 49, 51], found.Select(each => each.Id).Order());
        Assert.Equal(20, found[0].Id);
    }

    [Fact]
    public void Only_what_is_admitted_is_found()
    {
        var index = new LikenessIndex();
        for (var i = 1; i <= 100; i++)
        {
            index.Put(i, ShapeDescriptor.Of(Shapes.Circle(i)));
        }

        foreach (var mayTurn in new[] { false, true })
        {
            var found = index.Nearest(ShapeDescriptor.Of(Shapes.Circle(50)), 2, new(MayTurn: mayTurn), id => id > 70);

            Assert.Equal([71, 72], found.Select(each => each.Id));
        }
    }

    [Fact]
    public void An_empty_index_finds_nothing_and_equal_shapes_come_in_the_order_of_their_numbers()
    {
        var index = new LikenessIndex();
        var circle = ShapeDescriptor.Of(Shapes.Circle(5));
        Assert.Empty(index.Nearest(circle, 3, new(MayTurn: true)));

        foreach (var id in new long[] { 9, 4, 7, 2 })
        {
            index.Put(id, circle);
        }

        Assert.Equal([2, 4, 7], index.Nearest(circle, 3, new()).Select(each => each.Id));
        Assert.Equal([2, 4, 7], index.Nearest(circle, 3, new(MayTurn: true, MayMirror: true)).Select(each => each.Id));
    }

    private static Outline Again(Outline outline, Random random)
    {
        var moved = Shapes.Begun(outline, random.Next(outline.Count))
            .Turned(Angle.FromDegrees((random.NextDouble() - 0.5) * 30))
            .Scaled(1 + ((random.NextDouble() - 0.5) * 0.006));
        return Outline.From(moved.Resampled(150).Select(p =>
            new SectionPoint(p.XMm + (0.1 * (random.NextDouble() - 0.5)), p.YMm + (0.1 * (random.NextDouble() - 0.5))))).ValueOrThrow();
    }
}
