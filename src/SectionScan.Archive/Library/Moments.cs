using System.Globalization;

namespace SectionScan.Archive.Library;

/// <summary>Points in time as the library writes them: ISO 8601 in UTC, to the millisecond.</summary>
internal static class Moments
{
    private const string Form = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

    public static string ToText(DateTimeOffset moment) => moment.UtcDateTime.ToString(Form, CultureInfo.InvariantCulture);

    public static bool TryRead(string text, out DateTimeOffset moment) => DateTimeOffset.TryParseExact(
        text, Form, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out moment);

    public static DateTimeOffset FromText(string text) =>
        DateTimeOffset.ParseExact(text, Form, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal);
}
