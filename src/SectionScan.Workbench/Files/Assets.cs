using System.Reflection;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;

namespace SectionScan.Workbench.Files;

/// <summary>Styles and scripts, from within the assembly.</summary>
internal static class Assets
{
    private const string Prefix = "assets/";

    private static readonly Assembly Own = typeof(Assets).Assembly;

    private static readonly Dictionary<string, byte[]> All = Own.GetManifestResourceNames()
        .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
        .ToDictionary(name => name[Prefix.Length..], Read, StringComparer.Ordinal);

    // Another build, another tag: a browser never mixes two versions of the program.
    private static readonly EntityTagHeaderValue Tag = new($"\"{Own.ManifestModule.ModuleVersionId:N}\"");

    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet("/assets/{name}", (string name, HttpContext context) =>
    {
        if (!All.TryGetValue(name, out var content))
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "no-cache";
        return Results.Bytes(content, TypeOf(name), entityTag: Tag);
    });

    private static string TypeOf(string name) => Path.GetExtension(name) switch
    {
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".svg" => "image/svg+xml",
        _ => "application/octet-stream",
    };

    private static byte[] Read(string name)
    {
        using var stream = Own.GetManifestResourceStream(name)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
