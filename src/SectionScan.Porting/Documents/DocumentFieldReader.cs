using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Documents;

/// <summary>Reads the fields of a document one by one. The first thing wrong is kept; whatever is read after it is a default that
/// the caller drops together with the rest.</summary>
internal sealed class DocumentFieldReader(string where)
{
    public string Where { get; } = where;

    public Problem? FirstProblem { get; private set; }

    public DocumentField Member(DocumentField parent, string name)
    {
        if (parent.Element.ValueKind is not (JsonValueKind.Object or JsonValueKind.Undefined))
        {
            Unusable(parent, "an object");
        }
        else if (parent.Optional(name) is { } member)
        {
            return member;
        }
        else if (parent.Element.ValueKind == JsonValueKind.Object)
        {
            Note(SectionDocumentProblems.FieldMissing(Where, parent.PathOf(name)));
        }

        return default;
    }

    public double Number(DocumentField field)
    {
        if (field.Element.ValueKind == JsonValueKind.Number && field.Element.TryGetDouble(out var value) && double.IsFinite(value))
        {
            return value;
        }

        Unusable(field, "a finite number");
        return 0;
    }

    public int Count(DocumentField field)
    {
        if (field.Element.ValueKind == JsonValueKind.Number && field.Element.TryGetInt32(out var value) && value >= 0)
        {
            return value;
        }

        Unusable(field, "a whole number, zero or more");
        return 0;
    }

    public bool Flag(DocumentField field)
    {
        if (field.Element.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return field.Element.GetBoolean();
        }

        Unusable(field, "true or false");
        return false;
    }

    public string Text(DocumentField field)
    {
        try
        {
            if (field.Element.ValueKind == JsonValueKind.String)
            {
                return field.Element.GetString()!;
            }
        }
        catch (InvalidOperationException)
        {
            // Half a surrogate pair: valid JSON, but no text. It is reported below like any other unusable value.
        }

        Unusable(field, "a text");
        return "";
    }

    public IReadOnlyList<DocumentField> Items(DocumentField field, int most)
    {
        if (field.Element.ValueKind != JsonValueKind.Array || field.Element.GetArrayLength() > most)
        {
            Unusable(field, $"a list of at most {most} items");
            return [];
        }

        var items = new DocumentField[field.Element.GetArrayLength()];
        using var elements = field.Element.EnumerateArray();
        for (var i = 0; elements.MoveNext(); i++)
        {
            items[i] = new(elements.Current, $"{field.Path}[{i}]");
        }

        return items;
    }

    public (double X, double Y) Pair(DocumentField field)
    {
        if (field.Element.ValueKind == JsonValueKind.Array && field.Element.GetArrayLength() == 2)
        {
            return (Number(new(field.Element[0], $"{field.Path}[0]")), Number(new(field.Element[1], $"{field.Path}[1]")));
        }

        Unusable(field, "a pair of numbers [x, y]");
        return default;
    }

    /// <summary>A whole record, its members named as the serializer names them; null when anything in it is wrong.</summary>
    public T? Facts<T>(DocumentField field)
        where T : class
    {
        Complete(field, SectionDocumentWriter.Facts.GetTypeInfo(typeof(T)));
        if (FirstProblem is not null)
        {
            return null;
        }

        try
        {
            return field.Element.Deserialize<T>(SectionDocumentWriter.Facts);
        }
        catch (Exception exception) when (exception is JsonException or NotSupportedException or InvalidOperationException)
        {
            var path = (exception as JsonException)?.Path?.TrimStart('$') ?? "";
            Unusable(new(field.Element, field.Path + path), "of the kind that the format states");
            return null;
        }
    }

    /// <summary>The members of an object, names and values.</summary>
    public IReadOnlyList<(string Name, DocumentField Value)> Members(DocumentField field)
    {
        if (field.Element.ValueKind != JsonValueKind.Object)
        {
            Unusable(field, "an object");
            return [];
        }

        try
        {
            var members = new List<(string, DocumentField)>();
            using var properties = field.Element.EnumerateObject();
            while (properties.MoveNext())
            {
                var (name, value) = (properties.Current.Name, properties.Current.Value);
                members.Add((name, new(value, field.PathOf(name))));
            }

            return members;
        }
        catch (InvalidOperationException)
        {
            // A name with half a surrogate pair.
            Unusable(field, "an object with readable names");
            return [];
        }
    }

    /// <summary>Notes that a field holds something else than it should.</summary>
    public void Unusable(DocumentField field, string expected)
    {
        // An undefined element follows from a field that was missing and has been noted.
        if (field.Element.ValueKind != JsonValueKind.Undefined)
        {
            Note(SectionDocumentProblems.FieldUnusable(Where, field.Path, expected));
        }
    }

    private void Note(Problem problem) => FirstProblem ??= problem;

    private void Complete(DocumentField field, JsonTypeInfo type)
    {
        if (type.PolymorphismOptions is { } kinds)
        {
            var kind = Text(Member(field, kinds.TypeDiscriminatorPropertyName));
            var known = kinds.DerivedTypes.FirstOrDefault(each => kind.Equals(each.TypeDiscriminator)).DerivedType;
            if (known is null)
            {
                var names = string.Join(", ", kinds.DerivedTypes.Select(each => each.TypeDiscriminator));
                Unusable(new(field.Element, field.PathOf("kind")), $"one of {names}");
                return;
            }

            type = SectionDocumentWriter.Facts.GetTypeInfo(known);
        }

        foreach (var property in type.Properties)
        {
            var member = Member(field, property.Name);
            if (property.PropertyType == typeof(double))
            {
                Number(member);
            }
            else if (SectionDocumentWriter.Facts.GetTypeInfo(property.PropertyType) is { Kind: JsonTypeInfoKind.Object } nested)
            {
                Complete(member, nested);
            }
        }
    }
}
