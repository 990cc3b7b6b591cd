using System.Globalization;
using SectionScan.Testing.Rendering;

namespace SectionScan.Accuracy.Report;

/// <summary>What the command line asks for.</summary>
internal sealed record ReportOptions(
    string Table, int? Cases, int First, double Scale, HardCase[] Families, string? KeptIn, string? PicturesIn, bool HasProfile, bool HasNone)
{
    public const string Usage = """
        Prints how far digitised sections are from the truth.
        Usage: dotnet run --project tests/SectionScan.Accuracy.Report -c Release -- TABLE [OPTIONS]
          public      the sample photographs
          generated   rendered scenes, family by family
          mixed       rendered scenes with several hard things at once
          coverage    how often the stated intervals hold the truth, with a Monte Carlo check
        Options:
          --cases N         photos a family (generated: 2) or in all (mixed: 2, coverage: 100)
          --first N         the number of the first scene (1)
          --scale S         sides of the rendered photos, of 4032 x 3024 pixels (1; coverage: 0.5)
          --family NAME     only this family; may be repeated
          --keep FOLDER     keep rendered photos there and use those that lie there
          --pictures FOLDER write each photo with its outlines there
          --lens WHICH      profile or none (both)
        """;

    public static ReportOptions? Parse(string[] args)
    {
        if (args.Length == 0 || args[0] is not ("public" or "generated" or "mixed" or "coverage") || args.Length % 2 == 0)
        {
            return null;
        }

        var options = new ReportOptions(args[0], null, 1, args[0] == "coverage" ? 0.5 : 1, Enum.GetValues<HardCase>(), null, null, true, true);
        var families = new List<HardCase>();
        for (var i = 1; i < args.Length; i += 2)
        {
            var value = args[i + 1];
            switch (args[i])
            {
                case "--cases":
                    options = options with { Cases = int.Parse(value, CultureInfo.InvariantCulture) };
                    break;
                case "--first":
                    options = options with { First = int.Parse(value, CultureInfo.InvariantCulture) };
                    break;
                case "--scale":
                    options = options with { Scale = double.Parse(value, CultureInfo.InvariantCulture) };
                    break;
                case "--family":
                    families.Add(Enum.Parse<HardCase>(value, ignoreCase: true));
                    break;
                case "--keep":
                    options = options with { KeptIn = value };
                    break;
                case "--pictures":
                    options = options with { PicturesIn = Directory.CreateDirectory(value).FullName };
                    break;
                case "--lens":
                    options = options with { HasProfile = value == "profile", HasNone = value == "none" };
                    break;
                default:
                    return null;
            }
        }

        return families.Count > 0 ? options with { Families = [.. families] } : options;
    }

    public IEnumerable<bool> Lenses => new[] { true, false }.Where(p => p ? HasProfile : HasNone);
}
