namespace SectionScan.Jobs.Demo;

/// <summary>What the demonstration works on.</summary>
/// <param name="PhotosFolder">The folder of the sample photographs.</param>
/// <param name="OutputFolder">Where everything that is made goes; earlier results of the same names are replaced.</param>
/// <param name="Program">Name and version of the program, for the documents.</param>
/// <param name="Time">The clock that tells when a section came into the library.</param>
public sealed record DemoOrder(string PhotosFolder, string OutputFolder, string Program, TimeProvider Time);
