namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>What a number field holds.</summary>
public enum FieldUnit
{
    /// <summary>A number whose unit never changes, or that has none.</summary>
    None,

    /// <summary>A length, mm or inch.</summary>
    Length,

    /// <summary>An area, mm² or in².</summary>
    Area,
}
