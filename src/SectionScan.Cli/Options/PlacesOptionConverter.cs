using System.ComponentModel;
using System.Globalization;

namespace SectionScan.Cli.Options;

internal sealed class PlacesOptionConverter : TypeConverter
{
    public override bool CanConvertFrom(ITypeDescriptorContext? context, Type sourceType) => sourceType == typeof(string);

    public override object ConvertFrom(ITypeDescriptorContext? context, CultureInfo? culture, object value) =>
        PlacesOption.Parse((string)value).TryGet(out var read, out var problem) ? read : throw new OptionException(problem);
}
