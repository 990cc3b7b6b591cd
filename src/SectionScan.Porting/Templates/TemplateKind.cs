namespace SectionScan.Porting.Templates;

/// <summary>What a template is laid against.</summary>
public enum TemplateKind
{
    /// <summary>A plug plate that goes into the port.</summary>
    Inside,

    /// <summary>A plate whose cut-out goes over a mould of the port.</summary>
    Outside,
}
