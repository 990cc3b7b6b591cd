namespace SectionScan.Porting.Cutting;

/// <summary>The usual cautions, shown wherever a cut is planned. Common practice, no source, unless a source is named.</summary>
public static class CutCautions
{
    /// <summary>All of it in two sentences, for a page with little room.</summary>
    public static string InShort { get; } =
        "Know the walls before you cut (oil, water, spring pocket), protect eyes, ears and lungs, and pressure-test afterwards. "
        + "Local rules and licensed practice come first: this drawing informs, a qualified person decides.";

    /// <summary>Each caution as one or two sentences.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "Break-through: oil drains, water jackets and spring pockets lie close behind the walls. A wall in the section plane is thinner still where it leans (at 30° by 13 %), and cores shift: measure the walls of this very casting.",
        "Going too large costs speed of the gas and with it torque low down; metal taken off does not come back. Stop at the rough line, check with the template, then finish.",
        "Never cut valve seats, guides or sealing faces by hand.",
        "Wear eye and hearing protection. Keep burrs below their rated speed and throw chipped ones away.",
        "Dust: extraction and a respirator. Fine aluminium dust can burn or explode; grinding grey iron can raise silica dust.",
        "Before use: wash the grit out, look for cracks, pressure-test jacket and passages.",
        "Aircraft, pressure and road-legal work belongs to licensed practice; local emission and noise rules may forbid the change. The plan informs, a qualified person decides.",
    ];
}
