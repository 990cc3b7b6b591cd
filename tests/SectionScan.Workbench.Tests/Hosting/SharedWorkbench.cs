namespace SectionScan.Workbench.Tests.Hosting;

/// <summary>All browser tests share one workbench and one browser.</summary>
[CollectionDefinition(Name)]
public sealed class SharedWorkbench : ICollectionFixture<RunningWorkbench>
{
    public const string Name = "workbench";
}
