namespace SectionScan.Porting.Templates;

/// <summary>The stage of the work that a template is for.</summary>
public enum TemplateStage
{
    /// <summary>After roughing: the finishing allowance is still there.</summary>
    Rough,

    /// <summary>The finished port.</summary>
    Finish,
}
