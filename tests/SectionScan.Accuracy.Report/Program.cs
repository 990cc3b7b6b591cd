// Prints the tables of accuracy and coverage; DEVELOPERS.md names the commands.
using SectionScan.Accuracy.Report;

if (ReportOptions.Parse(args) is not { } options)
{
    Console.Error.WriteLine(ReportOptions.Usage);
    return 2;
}

switch (options.Table)
{
    case "public":
        AccuracyReport.OfSamplePhotos(options);
        break;
    case "generated" or "mixed":
        AccuracyReport.OfScenes(options);
        break;
    default:
        CoverageReport.Print(options);
        break;
}

return 0;
