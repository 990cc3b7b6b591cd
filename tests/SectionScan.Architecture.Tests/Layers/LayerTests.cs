using System.Xml.Linq;

namespace SectionScan.Architecture.Tests.Layers;

public class LayerTests
{
    // The arrows of the map in DEVELOPERS.md, each once; what an arrow reaches, its user may use too.
    private static readonly Dictionary<string, string[]> Arrows = new()
    {
        ["SectionScan.Metrology"] = [],
        ["SectionScan.Porting"] = ["SectionScan.Metrology"],
        ["SectionScan.Imaging"] = ["SectionScan.Metrology"],
        ["SectionScan.Archive"] = ["SectionScan.Porting"],
        ["SectionScan.Drawings"] = ["SectionScan.Porting"],
        ["SectionScan.Jobs"] = ["SectionScan.Archive", "SectionScan.Drawings", "SectionScan.Imaging"],
        ["SectionScan.Workbench.ViewModels"] = ["SectionScan.Jobs"],
        ["SectionScan.Workbench"] = ["SectionScan.Workbench.ViewModels"],
        ["SectionScan.Cli"] = ["SectionScan.Jobs", "SectionScan.Workbench"],
    };

    // Packages that one project alone may see, by the beginning of their assemblies' and packages' names.
    private static readonly Dictionary<string, string> Owners = new()
    {
        ["OpenCvSharp"] = "SectionScan.Imaging",
        ["SixLabors"] = "SectionScan.Imaging",
        ["Magick"] = "SectionScan.Imaging",
        ["Microsoft.Data.Sqlite"] = "SectionScan.Archive",
        ["SQLitePCL"] = "SectionScan.Archive",
        ["Dapper"] = "SectionScan.Archive",
        ["PDFsharp"] = "SectionScan.Drawings",
        ["ScottPlot"] = "SectionScan.Drawings",
        ["SharpGLTF"] = "SectionScan.Drawings",
        ["Spectre.Console"] = "SectionScan.Cli",
        ["Microsoft.AspNetCore"] = "SectionScan.Workbench",
        ["QRCoder"] = "SectionScan.Workbench",
    };

    // A page binds to the commands of its view model, so these two see them.
    private static readonly string[] SeeCommands = ["SectionScan.Workbench.ViewModels", "SectionScan.Workbench"];

    // Streams and text readers are handed in; opening a file, asking the time or writing to a console is not for these two.
    private static readonly string[] Impure =
    [
        "System.IO.File", "System.IO.FileInfo", "System.IO.FileStream", "System.IO.Directory", "System.IO.DirectoryInfo",
        "System.IO.StreamReader", "System.IO.StreamWriter", "System.Console", "System.TimeProvider", "System.Environment",
        "System.Diagnostics.Stopwatch", "System.Diagnostics.Process", "System.Net.Http.HttpClient",
    ];

    public static TheoryData<string> Projects => [.. BuiltProject.AllNames];

    [Fact]
    public void Every_project_has_its_place_on_the_map() =>
        Assert.Equal(Arrows.Keys.Order(StringComparer.Ordinal), BuiltProject.AllNames);

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_file_names_only_the_arrows(string name)
    {
        var named = XDocument.Load(BuiltProject.ProjectFileOf(name)).Descendants("ProjectReference")
            .Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value.Replace('\\', '/')));

        Assert.Empty(named.Except(Arrows[name]));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void An_assembly_uses_only_what_its_arrows_reach(string name)
    {
        var used = BuiltProject.Read(name).AssemblyReferences.Where(reference => reference.StartsWith("SectionScan.", StringComparison.Ordinal));

        Assert.Empty(used.Except(Reach(name)));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_package_is_seen_by_its_owner_alone(string name)
    {
        var packages = XDocument.Load(BuiltProject.ProjectFileOf(name)).Descendants("PackageReference")
            .Select(reference => reference.Attribute("Include")!.Value);
        var seen = BuiltProject.Read(name).AssemblyReferences.Concat(packages);

        var strangers = seen.Where(package => Owners.Any(owned =>
            package.StartsWith(owned.Key, StringComparison.OrdinalIgnoreCase) && owned.Value != name)
            || (package.StartsWith("CommunityToolkit.Mvvm", StringComparison.OrdinalIgnoreCase) && !SeeCommands.Contains(name)));
        Assert.Empty(strangers);
    }

    [Theory]
    [InlineData("SectionScan.Metrology")]
    [InlineData("SectionScan.Porting")]
    public void Pure_projects_open_no_files_and_know_no_clock_and_no_console(string name) =>
        Assert.Empty(BuiltProject.Read(name).TypeReferences.Intersect(Impure));

    [Theory]
    [MemberData(nameof(Projects))]
    public void Only_the_command_line_knows_a_console(string name)
    {
        var usesConsole = BuiltProject.Read(name).TypeReferences.Contains("System.Console");

        Assert.Equal(name == "SectionScan.Cli", usesConsole);
    }

    private static HashSet<string> Reach(string name) => [.. Arrows[name].SelectMany(next => Reach(next).Append(next))];
}
