using System.Diagnostics.CodeAnalysis;
using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.Files;
using SectionScan.Workbench.Pages;
using SectionScan.Workbench.Phones;
using SectionScan.Workbench.Safety;
using SectionScan.Workbench.ViewModels.Desk;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.Hosting;

/// <summary>The running workbench: a small web server on this machine alone.</summary>
public sealed class WorkbenchHost : IAsyncDisposable
{
    private readonly WebApplication app;
    private readonly FileStream held;

    private WorkbenchHost(WebApplication app, FileStream held, Uri address)
    {
        this.app = app;
        this.held = held;
        Address = address;
    }

    /// <summary>Where it is found, on this machine.</summary>
    public Uri Address { get; }

    /// <summary>Starts it.</summary>
    /// <param name="options">With what.</param>
    /// <param name="stop">Ends the start.</param>
    [SuppressMessage("IDisposableAnalyzers.Correctness", "IDISP001", Justification = "The caller takes the host out of the result and disposes it.")]
    public static async Task<Result<WorkbenchHost>> StartAsync(WorkbenchOptions options, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (!JobsFolder.Open(options.JobsFolder).TryGet(out var jobs, out var problem) || !jobs.Hold().TryGet(out var held, out problem))
        {
            return problem;
        }

        foreach (var port in options.Port is { } asked ? new[] { asked } : [WorkbenchOptions.UsualPort, 0])
        {
            var app = Build(options, jobs, port);
            try
            {
                await app.StartAsync(stop).ConfigureAwait(false);
                var addresses = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!;
                return new WorkbenchHost(app, held, new Uri(addresses.Addresses.First()));
            }
            catch (IOException e) when (e.InnerException is AddressInUseException)
            {
                await app.DisposeAsync().ConfigureAwait(false);
            }
        }

        await held.DisposeAsync().ConfigureAwait(false);
        return WorkbenchProblems.PortTaken(options.Port ?? WorkbenchOptions.UsualPort);
    }

    /// <summary>Waits until it is stopped.</summary>
    /// <param name="stop">Stops it.</param>
    public async Task WaitAsync(CancellationToken stop)
    {
        var ended = new TaskCompletionSource();
        await using var stopping = stop.Register(() => ended.TrySetResult()).ConfigureAwait(false);

        // The system asks too: at logging out, at shutting down.
        await using var asked = app.Lifetime.ApplicationStopping.Register(() => ended.TrySetResult()).ConfigureAwait(false);
        await ended.Task.ConfigureAwait(false);
        await app.StopAsync(CancellationToken.None).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    [SuppressMessage("IDisposableAnalyzers.Correctness", "IDISP007", Justification = "StartAsync makes the server for this object alone.")]
    public async ValueTask DisposeAsync()
    {
        await app.DisposeAsync().ConfigureAwait(false);
        await held.DisposeAsync().ConfigureAwait(false);
    }

    private static WebApplication Build(WorkbenchOptions options, JobsFolder jobs, int port)
    {
        // Empty: no settings files, no environment, no console; what it does is written here.
        var builder = WebApplication.CreateEmptyBuilder(new() { ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseKestrelCore().ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = PhotoUpload.MostRequestBytes;
            server.Listen(IPAddress.Loopback, port);
        });
        var services = builder.Services;
        services.AddRouting();
        services.AddLogging();
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        services.AddAntiforgery(antiforgery =>
        {
            antiforgery.HeaderName = PhotoUpload.TokenHeader;
            antiforgery.Cookie.Name = "sectionscan-form";
            antiforgery.Cookie.SameSite = Microsoft.AspNetCore.Http.SameSiteMode.Strict;
        });
        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddSingleton(new JobDesk(jobs, options.LibraryPath, options.SampleFolders, options.Program, options.Time));
        services.AddSingleton<JobBenches>();
        services.AddSingleton(new UnitChoice(jobs.FullPath));
        services.AddSingleton(_ => new PhoneDoor(options.Time));
        services.AddSingleton<PhotoPreviews>();
        services.AddScoped<StartViewModel>();
        services.AddScoped<JobViewModel>();
        services.AddScoped<PrepareViewModel>();
        services.AddScoped<CaptureViewModel>();
        services.AddScoped<DigitiseViewModel>();
        services.AddScoped<CorrectViewModel>();
        services.AddScoped<ScaleViewModel>();
        services.AddScoped<CompareViewModel>();
        services.AddScoped<DecideViewModel>();
        services.AddScoped<WallsViewModel>();
        services.AddScoped<PortDataViewModel>();
        services.AddScoped<CutViewModel>();
        services.AddScoped<ProveViewModel>();
        services.AddScoped<ArchiveViewModel>();
        services.AddScoped<LibraryViewModel>();

        var app = builder.Build();
        app.UseMiddleware<SameSiteGuard>();
        app.UseMiddleware<SafetyHeaders>();
        app.UseStatusCodePagesWithReExecute("/not-found");
        app.UseRouting();
        app.UseAntiforgery();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(
            server => server.ContentSecurityFrameAncestorsPolicy = "'none'");
        Assets.Map(app);
        JobFiles.Map(app);
        MadeFiles.Map(app);
        PhotoUpload.Map(app);
        LibraryFiles.Map(app);
        return app;
    }
}
