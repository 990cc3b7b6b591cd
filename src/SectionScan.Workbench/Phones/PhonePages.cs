using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using SectionScan.Workbench.Files;
using SectionScan.Workbench.Pages;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.Phones;

/// <summary>What a phone sees: a page to send photos from, and nothing else.</summary>
internal static class PhonePages
{
    private const string CookieName = "sectionscan-phone";

    public static void Map(IEndpointRouteBuilder routes, PhoneDoor door)
    {

        // What only looks at an address, such as a preview of a link, must not use the code up; and learns nothing of it.
        routes.MapGet("/c/{code}", () => new RazorComponentResult<PhoneEntryPage>());
        routes.MapPost("/c/{code}", (string code, HttpContext context) => Enter(code, context, door));
        routes.MapGet("/send", (HttpContext context) => Page(context, door));
        routes.MapPost("/photos", (Func<HttpContext, Task<IResult>>)(context => TakeAsync(context, door)));
    }

    private static IResult Enter(string code, HttpContext context, PhoneDoor door)
    {
        if (door.Enter(code) is not { } visit)
        {
            return Refused();
        }

        context.Response.Cookies.Append(CookieName, visit, new()
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Lax,
            MaxAge = PhoneDoor.VisitLasts,
            Path = "/",
        });
        return Results.Redirect("/send");
    }

    private static IResult Page(HttpContext context, PhoneDoor door) =>
        context.Request.Cookies[CookieName] is { } visit && door.JobOf(visit) is { } job
            ? new RazorComponentResult<PhonePage>(new { JobName = job.Job.Name, HowToHold = CaptureViewModel.HoldFor(job.Job), Token = visit })
            : Refused();

    private static async Task<IResult> TakeAsync(HttpContext context, PhoneDoor door)
    {
        // The cookie alone is not enough: another site's form would send it along; our page also sends it as a header.
        var visit = context.Request.Cookies[CookieName];
        return visit is not null && context.Request.Headers[PhotoUpload.TokenHeader] == visit && door.JobOf(visit) is { } job
            ? await PhotoUpload.TakeAsync(context, job).ConfigureAwait(false)
            : Refused();
    }

    private static IResult Refused() => Results.Text(
        "This code is used up or has expired. Open a new one in the workbench, at Capture.", statusCode: StatusCodes.Status403Forbidden);
}
