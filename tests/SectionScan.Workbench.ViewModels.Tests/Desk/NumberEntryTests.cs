using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Tests.Desk;

public class NumberEntryTests
{
    [Theory]
    [InlineData("6.5", 6.5)]
    [InlineData(" -3 ", -3.0)]
    [InlineData("−3", -3.0)]
    [InlineData("", null)]
    [InlineData(null, null)]
    public void A_number_is_read_and_an_empty_field_is_none(string? typed, double? expected)
    {
        Assert.True(NumberEntry.TryRead(typed, "field", out var value, out _));

        Assert.Equal(expected, value);
    }

    [Theory]
    [InlineData("6,5", "Write a point")]
    [InlineData("six", "Write digits")]
    [InlineData("6.5 mm", "Write digits")]
    [InlineData("1e3", "Write digits")]
    [InlineData("NaN", "Write digits")]
    public void What_is_no_number_is_told_with_what_to_write_instead(string typed, string remedy)
    {
        Assert.False(NumberEntry.TryRead(typed, "field", FieldUnit.Length, isInch: true, out var value, out var problem));

        Assert.Null(value);
        Assert.Equal("not-a-number", problem.Code);
        Assert.Contains(typed, problem.What, StringComparison.Ordinal);
        Assert.StartsWith(remedy, problem.Remedy, StringComparison.Ordinal);
    }

    /// <summary>One inch is 25.4 mm exactly (ISO 80000-3; international yard and pound agreement, 1959).</summary>
    [Theory]
    [InlineData(FieldUnit.Length, 50.8, "2")]
    [InlineData(FieldUnit.Area, 1290.32, "2")]
    [InlineData(FieldUnit.None, 2.0, "2")]
    public void Inches_are_shown_and_read_back(FieldUnit unit, double stored, string shown)
    {
        Assert.Equal(shown, NumberEntry.Text(stored, unit, isInch: true));

        Assert.True(NumberEntry.TryRead(shown, "field", unit, isInch: true, out var value, out _));
        Assert.Equal(stored, value!.Value, 9);
    }

    [Fact]
    public void Nothing_is_shown_for_no_number_and_no_unit_behind_a_bare_one()
    {
        Assert.Equal("", NumberEntry.Text(null, FieldUnit.Length, isInch: false));
        Assert.Equal("", NumberEntry.Text(double.NaN, FieldUnit.Length, isInch: false));
        Assert.Equal("6.5", NumberEntry.Text(6.5, FieldUnit.Length, isInch: false));
        Assert.Equal(("mm", "in²", null), (NumberEntry.UnitWord(FieldUnit.Length, false), NumberEntry.UnitWord(FieldUnit.Area, true), NumberEntry.UnitWord(FieldUnit.None, true)));
    }
}
