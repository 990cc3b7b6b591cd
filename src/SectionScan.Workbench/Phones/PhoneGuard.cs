using System.Net;
using Microsoft.AspNetCore.Http;
using SectionScan.Workbench.Safety;

namespace SectionScan.Workbench.Phones;

/// <summary>Lets in only what comes by the number of this machine's own address and from our own page.</summary>
internal sealed class PhoneGuard(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context)
    {
        // A name could be pointed here by anybody; a number cannot.
        var host = context.Request.Host;
        var isOwn = IPAddress.TryParse(host.Host, out var number) && context.Connection.LocalIpAddress is { } local
            && number.Equals(local.IsIPv4MappedToIPv6 ? local.MapToIPv4() : local) && host.Port == context.Connection.LocalPort;
        if (isOwn && SameSiteGuard.IsOwnOrigin(context.Request))
        {
            return next(context);
        }

        context.Response.StatusCode = isOwn ? StatusCodes.Status403Forbidden : StatusCodes.Status421MisdirectedRequest;
        return Task.CompletedTask;
    }
}
