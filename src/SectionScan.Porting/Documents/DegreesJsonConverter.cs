using System.Text.Json;
using System.Text.Json.Serialization;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Porting.Documents;

/// <summary>An angle as a number of degrees, rounded to 0.000001°.</summary>
internal sealed class DegreesJsonConverter : JsonConverter<Angle>
{
    public override Angle Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.Number && reader.TryGetDouble(out var degrees) && double.IsFinite(degrees)
            ? Angle.FromDegrees(degrees)
            : throw new JsonException("A number of degrees is wanted.");

    public override void Write(Utf8JsonWriter writer, Angle value, JsonSerializerOptions options) =>
        writer.WriteNumberValue(SectionDocument.RoundedDeg(value.Degrees));
}
