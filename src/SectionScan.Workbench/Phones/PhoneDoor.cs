using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using SectionScan.Workbench.Files;
using SectionScan.Workbench.Safety;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.Phones;

/// <summary>A door for a phone in the same network: closed until the person opens it, for one job, and only to send photos. It is a
/// server of its own, which knows no other page.</summary>
public sealed class PhoneDoor : IAsyncDisposable
{
    /// <summary>How long a code may wait for its phone.</summary>
    public static readonly TimeSpan CodeLasts = TimeSpan.FromMinutes(10);

    /// <summary>How long a phone may send after it came in.</summary>
    public static readonly TimeSpan VisitLasts = TimeSpan.FromHours(2);

    // Without letters and digits that look alike; 12 of 30 are 58 bits.
    private const string Letters = "ABCDEFGHJKMNPQRSTVWXYZ23456789";
    private const int CodeLength = 12;
    private const int MostWrongCodes = 20;

    private readonly Lock gate = new();
    private readonly SemaphoreSlim turning = new(1, 1);
    private readonly TimeProvider time;
    private WebApplication? app;
    private string? code;
    private string? visit;
    private DateTimeOffset codeEnds;
    private DateTimeOffset visitEnds;
    private int wrongCodes;

    /// <summary>Makes it, closed.</summary>
    public PhoneDoor(TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        this.time = time;
    }

    /// <summary>Where the phone finds it, one address for each network of this machine; empty while it is closed.</summary>
    public IReadOnlyList<Uri> Addresses { get; private set; } = [];

    /// <summary>The job that photos go to, or null while it is closed.</summary>
    public LiveJob? Job { get; private set; }

    /// <summary>Opens it with a new code; what was open before is closed.</summary>
    public async Task OpenAsync(LiveJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        await turning.WaitAsync().ConfigureAwait(false);
        try
        {
            await ShutAsync().ConfigureAwait(false);
            var opened = Build();
            await opened.StartAsync().ConfigureAwait(false);
            var port = new Uri(opened.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First()).Port;
            lock (gate)
            {
                code = RandomNumberGenerator.GetString(Letters, CodeLength);
                (visit, wrongCodes, codeEnds) = (null, 0, time.GetUtcNow() + CodeLasts);
#pragma warning disable IDISP003 // shut above, so there is none
                app = opened;
#pragma warning restore IDISP003
                Job = job;
                Addresses = [.. OwnAddresses().Select(each => new Uri(FormattableString.Invariant($"http://{each}:{port}/c/{code}")))];
            }
        }
        finally
        {
            turning.Release();
        }
    }

    /// <summary>Closes it; a phone that is inside is out.</summary>
    public async Task CloseAsync()
    {
        await turning.WaitAsync().ConfigureAwait(false);
        try
        {
            await ShutAsync().ConfigureAwait(false);
        }
        finally
        {
            turning.Release();
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await CloseAsync().ConfigureAwait(false);
        turning.Dispose();
    }

    /// <summary>Exchanges the code for a visit, once.</summary>
    /// <returns>The visit's secret, or null: wrong, used or too late.</returns>
    internal string? Enter(string shown)
    {
        lock (gate)
        {
            if (code is null || time.GetUtcNow() >= codeEnds || !IsSame(shown, code))
            {
                // Guessing ends the code.
                code = ++wrongCodes >= MostWrongCodes ? null : code;
                return null;
            }

            code = null;
            visitEnds = time.GetUtcNow() + VisitLasts;
            return visit = Convert.ToHexString(RandomNumberGenerator.GetBytes(32));
        }
    }

    /// <summary>The job that a visit sends to, or null when it is none.</summary>
    internal LiveJob? JobOf(string? shown)
    {
        lock (gate)
        {
            return shown is not null && visit is not null && time.GetUtcNow() < visitEnds && IsSame(shown, visit) ? Job : null;
        }
    }

    private static bool IsSame(string shown, string kept) => CryptographicOperations.FixedTimeEquals(
        System.Text.Encoding.UTF8.GetBytes(shown), System.Text.Encoding.UTF8.GetBytes(kept));

    private static IEnumerable<IPAddress> OwnAddresses() => NetworkInterface.GetAllNetworkInterfaces()
        .Where(each => each.OperationalStatus == OperationalStatus.Up && each.NetworkInterfaceType != NetworkInterfaceType.Loopback)
        .SelectMany(each => each.GetIPProperties().UnicastAddresses.Select(address => address.Address))
        .Where(each => each.AddressFamily == AddressFamily.InterNetwork)
        .DefaultIfEmpty(IPAddress.Loopback);

    private WebApplication Build()
    {
        var builder = WebApplication.CreateEmptyBuilder(new() { ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseKestrelCore().ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = PhotoUpload.MostRequestBytes;
            server.Limits.MaxConcurrentConnections = 20;
            server.Listen(IPAddress.Any, 0);
        });
        builder.Services.AddRouting();
        builder.Services.AddLogging();
        builder.Services.AddRazorComponents();
        var built = builder.Build();
        built.UseMiddleware<PhoneGuard>();
        built.UseMiddleware<SafetyHeaders>();
        built.UseRouting();
        Assets.Map(built);
        PhonePages.Map(built, this);
        return built;
    }

    private async Task ShutAsync()
    {
        WebApplication? closing;
        lock (gate)
        {
            (closing, app, code, visit, Job, Addresses) = (app, null, null, null, null, []);
        }

        if (closing is not null)
        {
            await closing.StopAsync().ConfigureAwait(false);
            await closing.DisposeAsync().ConfigureAwait(false);
        }
    }
}
