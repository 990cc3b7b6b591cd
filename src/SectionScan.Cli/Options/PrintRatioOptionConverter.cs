using System.ComponentModel;
using System.Globalization;

namespace SectionScan.Cli.Options;

internal sealed class PrintRatioOptionConverter : TypeConverter
{
    public override bool CanConvertFrom(ITypeDescriptorContext? context, Type sourceType) => sourceType == typeof(string);

    public override object ConvertFrom(ITypeDescriptorContext? context, CultureInfo? culture, object value) =>
        PrintRatioOption.Parse((string)value).TryGet(out var ratio, out var problem) ? ratio : throw new OptionException(problem);
}
