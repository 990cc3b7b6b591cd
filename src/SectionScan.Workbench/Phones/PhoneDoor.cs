using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.Files;
using SectionScan.Workbench.Hosting;
using SectionScan.Workbench.Safety;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.Phones;

/// <summary>A door for a phone in the same network: closed until the person opens it, for one job, in one network, and only to send
/// photos. It is a server of its own, which knows no other page, and it closes by itself when code or visit have run out.</summary>
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
    private readonly ITimer timer;
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
        timer = time.CreateTimer(_ => _ = CloseIfOverAsync(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>Told when it opens or closes, on whichever thread did it.</summary>
    public event EventHandler? Changed;

    /// <summary>Where the phone finds it; null while it is closed.</summary>
    public Uri? Address { get; private set; }

    /// <summary>The job that photos go to, or null while it is closed.</summary>
    public LiveJob? Job { get; private set; }

    /// <summary>The networks of this machine, those that lead on to others first; itself alone when there is none.</summary>
    public static IReadOnlyList<PhoneNetwork> Networks() => [.. NetworkInterface.GetAllNetworkInterfaces()
        .Where(each => each.OperationalStatus == OperationalStatus.Up && each.NetworkInterfaceType != NetworkInterfaceType.Loopback)
        .Select(each => (each.Name, Facts: each.GetIPProperties()))
        .OrderByDescending(each => each.Facts.GatewayAddresses.Count > 0)
        .SelectMany(each => each.Facts.UnicastAddresses.Select(address => new PhoneNetwork(each.Name, address.Address)))
        .Where(each => each.Address.AddressFamily == AddressFamily.InterNetwork)
        .DefaultIfEmpty(new("this machine", IPAddress.Loopback))];

    /// <summary>Opens it with a new code; what was open before is closed.</summary>
    /// <param name="job">Where photos go.</param>
    /// <param name="at">The address, one of <see cref="Networks"/>: nothing listens in the others. Null: the first one.</param>
    /// <returns>Why it cannot be opened, or null.</returns>
    public async Task<Problem?> OpenAsync(LiveJob job, IPAddress? at = null)
    {
        ArgumentNullException.ThrowIfNull(job);
        await turning.WaitAsync().ConfigureAwait(false);
        try
        {
            await ShutAsync().ConfigureAwait(false);
            return await ListenAsync(job, at ?? Networks()[0].Address).ConfigureAwait(false);
        }
        finally
        {
            turning.Release();
            Changed?.Invoke(this, EventArgs.Empty);
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
            Changed?.Invoke(this, EventArgs.Empty);
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await timer.DisposeAsync().ConfigureAwait(false);
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
            timer.Change(VisitLasts, Timeout.InfiniteTimeSpan);
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

    private async Task<Problem?> ListenAsync(LiveJob job, IPAddress at)
    {
#pragma warning disable IDISP001 // disposed at the end unless it was kept
        var opening = Build(at);
#pragma warning restore IDISP001
        try
        {
            await opening.StartAsync().ConfigureAwait(false);
            var port = new Uri(opening.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First()).Port;
            lock (gate)
            {
                code = RandomNumberGenerator.GetString(Letters, CodeLength);
                (visit, wrongCodes, codeEnds) = (null, 0, time.GetUtcNow() + CodeLasts);
#pragma warning disable IDISP003 // shut before, so there is none
                (app, opening) = (opening, null);
#pragma warning restore IDISP003
                Job = job;
                Address = new(FormattableString.Invariant($"http://{at}:{port}/c/{code}"));
                timer.Change(CodeLasts, Timeout.InfiniteTimeSpan);
            }

            return null;
        }
        catch (Exception e) when (e is IOException or SocketException)
        {
            return WorkbenchProblems.DoorStuck(at.ToString(), e.Message);
        }
        finally
        {
            if (opening is not null)
            {
                await opening.DisposeAsync().ConfigureAwait(false);
            }
        }
    }

    private async Task CloseIfOverAsync()
    {
        bool isOver;
        lock (gate)
        {
            isOver = app is not null && time.GetUtcNow() >= (visit is null ? codeEnds : visitEnds);
        }

        if (isOver)
        {
            await CloseAsync().ConfigureAwait(false);
        }
    }

    private WebApplication Build(IPAddress at)
    {
        var builder = WebApplication.CreateEmptyBuilder(new() { ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseKestrelCore().ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = PhotoUpload.MostRequestBytes;
            server.Limits.MaxConcurrentConnections = 20;
            server.Listen(at, 0);
        });
        builder.Services.AddRouting();
        builder.Services.AddLogging();
        builder.Services.AddRazorComponents();

        // A photo half sent is not worth waiting for: closed is closed.
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(1));
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
            (closing, app, code, visit, Job, Address) = (app, null, null, null, null, null);
            timer.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        }

        if (closing is not null)
        {
            await closing.StopAsync().ConfigureAwait(false);
            await closing.DisposeAsync().ConfigureAwait(false);
        }
    }
}
