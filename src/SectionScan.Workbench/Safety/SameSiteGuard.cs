using System.Globalization;
using System.Net;
using Microsoft.AspNetCore.Http;

namespace SectionScan.Workbench.Safety;

/// <summary>Lets in only what comes to this machine by its own name and from our own pages. A page of another site that the browser has
/// open can neither read nor send here, nor can a name of another site that was pointed at this machine.</summary>
internal sealed class SameSiteGuard(RequestDelegate next)
{
    private static readonly string[] OwnNames = ["127.0.0.1", "localhost", "[::1]"];

    public async Task InvokeAsync(HttpContext context)
    {
        var request = context.Request;
        if (!IsOwnHost(context))
        {
            await RefuseAsync(context, StatusCodes.Status421MisdirectedRequest, "This address is not the workbench's own.").ConfigureAwait(false);
            return;
        }

        if (!IsOwnOrigin(request))
        {
            await RefuseAsync(context, StatusCodes.Status403Forbidden, "The workbench answers its own pages only.").ConfigureAwait(false);
            return;
        }

        await next(context).ConfigureAwait(false);
    }

    private static bool IsOwnHost(HttpContext context)
    {
        var host = context.Request.Host;
        return context.Connection.RemoteIpAddress is { } remote && IPAddress.IsLoopback(remote)
            && OwnNames.Contains(host.Host, StringComparer.OrdinalIgnoreCase)
            && (host.Port ?? 80) == context.Connection.LocalPort;
    }

    /// <summary>True for a request without an origin, or from our own pages.</summary>
    public static bool IsOwnOrigin(HttpRequest request)
    {
        var own = string.Create(CultureInfo.InvariantCulture, $"{request.Scheme}://{request.Host}");
        if (request.Headers.Origin is { Count: > 0 } origin && origin != own)
        {
            return false;
        }

        // Fetch Metadata (W3C): a link from elsewhere may open a page, nothing else may come from another site.
        return request.Headers["Sec-Fetch-Site"].ToString() is not ("cross-site" or "same-site")
            || (HttpMethods.IsGet(request.Method) && request.Headers["Sec-Fetch-Mode"] == "navigate"
                && request.Headers["Sec-Fetch-Dest"] == "document");
    }

    private static Task RefuseAsync(HttpContext context, int status, string why)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(why);
    }
}
