using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Documents;

/// <summary>The lens profile as text: indented JSON with its schema first, UTF-8, lines ending in \n.</summary>
public static class LensProfileFormat
{
    /// <summary>The longest text that is read.</summary>
    public const int MaximumBytes = 1_000_000;

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        UnmappedMemberHandling = System.Text.Json.Serialization.JsonUnmappedMemberHandling.Skip,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    /// <summary>Writes a profile.</summary>
    public static string Write(LensProfile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        return JsonSerializer.Serialize(new Envelope(LensProfile.SchemaName, profile), Options) + "\n";
    }

    /// <summary>Reads a profile.</summary>
    /// <param name="json">The text.</param>
    /// <param name="where">The file, for messages.</param>
    /// <returns>The profile, or <c>not-a-lens-profile</c>.</returns>
    public static Result<LensProfile> Read(string json, string where)
    {
        ArgumentNullException.ThrowIfNull(json);
        if (json.Length > MaximumBytes)
        {
            return LensProfileProblems.NotALensProfile(where, "it is too long");
        }

        try
        {
            var envelope = JsonSerializer.Deserialize<Envelope>(json, Options);
            if (envelope is null || envelope.Schema != LensProfile.SchemaName)
            {
                return LensProfileProblems.NotALensProfile(where, $"its schema is {envelope?.Schema ?? "missing"}");
            }

            return IsSound(envelope.Profile)
                ? envelope.Profile
                : LensProfileProblems.NotALensProfile(where, "its numbers cannot be those of a lens");
        }
        catch (JsonException e)
        {
            return LensProfileProblems.NotALensProfile(where, $"line {(e.LineNumber ?? 0) + 1} is not as expected");
        }
    }

    private static bool IsSound(LensProfile profile) =>
        profile.WidthPx is > 0 and < 100_000 && profile.HeightPx is > 0 and < 100_000
        && profile.Lens.FocalXPx > 0 && profile.Lens.FocalYPx > 0
        && profile.Covariance.Count == LensPrior.ParameterCount
        && profile.Covariance.All(row => row.Count == LensPrior.ParameterCount && row.All(double.IsFinite))
        && Enumerable.Range(0, LensPrior.ParameterCount).All(i => profile.Covariance[i][i] > 0);

    private sealed record Envelope(string Schema, LensProfile Profile);
}
