using System.ComponentModel;
using System.Globalization;

namespace SectionScan.Cli.Options;

internal sealed class UnitOptionConverter : TypeConverter
{
    public override bool CanConvertFrom(ITypeDescriptorContext? context, Type sourceType) => sourceType == typeof(string);

    public override object ConvertFrom(ITypeDescriptorContext? context, CultureInfo? culture, object value) =>
        UnitOption.Parse((string)value).TryGet(out var unit, out var problem) ? unit : throw new OptionException(problem);
}
