using Microsoft.AspNetCore.Http;

namespace SectionScan.Workbench.Safety;

/// <summary>Tells the browser what our pages never do, so that nothing smuggled into them can do it.</summary>
internal sealed class SafetyHeaders(RequestDelegate next)
{
    /// <summary>Scripts, styles, pictures and connections of our own only; no script or style within the page.</summary>
    public const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
        + "form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    public Task InvokeAsync(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";

        // Without any referrer a browser sends "null" as the origin of our own forms, and they could not be told from another site's.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=()";
        return next(context);
    }
}
