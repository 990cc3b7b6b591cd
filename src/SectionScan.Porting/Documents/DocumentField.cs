using System.Text.Json;

namespace SectionScan.Porting.Documents;

/// <summary>A place in a document: the element and its path from the top, such as <c>camera.lens.k1</c>.</summary>
internal readonly record struct DocumentField(JsonElement Element, string Path)
{
    public bool IsNull => Element.ValueKind == JsonValueKind.Null;

    public DocumentField? Optional(string name) =>
        Element.ValueKind == JsonValueKind.Object && Element.TryGetProperty(name, out var member) ? new(member, PathOf(name)) : null;

    public string PathOf(string name) => Path.Length == 0 ? name : $"{Path}.{name}";
}
