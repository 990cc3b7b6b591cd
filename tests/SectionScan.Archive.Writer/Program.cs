// Adds sections to a library and prints the number of each entry once it is confirmed: LIBRARY HEAD COUNT.
// The tests of two processes at once and of a kill at any moment run it.
using System.Globalization;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Porting.Ports;
using SectionScan.Testing.Sections;

var (path, head, count) = (args[0], args[1], int.Parse(args[2], CultureInfo.InvariantCulture));
if (!SectionLibrary.Open(path, TimeProvider.System).TryGet(out var library, out var problem))
{
    Console.Error.WriteLine(problem);
    return 3;
}

using (library)
{
    for (var i = 0; i < count; i++)
    {
        var place = new SectionPlace(head, new(PortKind.Intake, 1 + (i / 900)), i % 900);
        if (!library.Add(new(place, SampleSections.Document(SampleSections.Blob(i)))).TryGet(out var entry, out problem))
        {
            Console.Error.WriteLine(problem);
            return 3;
        }

        Console.Out.WriteLine(entry.Id.ToString(CultureInfo.InvariantCulture));
        Console.Out.Flush();
    }
}

return 0;
