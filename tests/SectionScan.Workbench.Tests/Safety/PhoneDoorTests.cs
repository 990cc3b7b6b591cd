using System.Net;
using System.Net.Sockets;
using System.Text;
using Microsoft.Extensions.Time.Testing;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.Phones;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.Tests.Safety;

#pragma warning disable CA1001 // xunit ends the life of what is made here: DisposeAsync
public sealed class PhoneDoorTests : IAsyncLifetime
#pragma warning restore CA1001
{
    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-phone-").FullName;
    private readonly FakeTimeProvider clock = new();
    private readonly CookieContainer cookies = new();
    private readonly HttpClient phone;
    private readonly PhoneDoor door;
    private readonly LiveJob job;

    public PhoneDoorTests()
    {
        phone = new(new HttpClientHandler { CookieContainer = cookies });
        door = new(clock);
        var desk = new JobDesk(JobsFolder.Open(folder).ValueOrThrow(), "none", [], "test", TimeProvider.System);
        job = desk.Open(desk.Begin("Phone").ValueOrThrow()).ValueOrThrow();
    }

    public Task InitializeAsync() => door.OpenAsync(job);

    public async Task DisposeAsync()
    {
        phone.Dispose();
        await door.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task The_code_lets_one_phone_in_once_and_the_photo_arrives()
    {
        var address = door.Address!;
        using var entered = await EnterAsync(phone, address);
        Assert.Equal(HttpStatusCode.OK, entered.StatusCode);
        Assert.Contains("Send photos", await entered.Content.ReadAsStringAsync(), StringComparison.Ordinal);

        using var sent = await SendAsync(address, await File.ReadAllBytesAsync(SamplePhotos.PhotoPath("c01")), Visit(address));
        Assert.Equal(HttpStatusCode.OK, sent.StatusCode);
        Assert.Equal("c01.jpg", Assert.Single(job.Job.Photos).GivenName);

        using var stranger = new HttpClient();
        using var again = await EnterAsync(stranger, address);
        Assert.Equal(HttpStatusCode.Forbidden, again.StatusCode);
    }

    [Fact]
    public async Task Looking_at_the_address_does_not_use_the_code_up()
    {
        var address = door.Address!;
        using var looked = await phone.GetAsync(address);
        Assert.Contains("Let this phone in", await looked.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var wrong = await phone.GetAsync(new Uri(address, "/c/GUESSGUESSGU"));
        Assert.Equal(await looked.Content.ReadAsStringAsync(), await wrong.Content.ReadAsStringAsync());

        using var entered = await EnterAsync(phone, address);

        Assert.Equal(HttpStatusCode.OK, entered.StatusCode);
        Assert.Contains("tilt the camera", await entered.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task When_the_code_has_expired_the_door_closes_by_itself()
    {
        var address = door.Address!;
        clock.Advance(PhoneDoor.CodeLasts - TimeSpan.FromSeconds(1));
        using var open = await phone.GetAsync(address);
        Assert.Equal(HttpStatusCode.OK, open.StatusCode);

        await ClosedAfterAsync(TimeSpan.FromSeconds(1));

        await Assert.ThrowsAsync<HttpRequestException>(() => EnterAsync(phone, address));
    }

    [Fact]
    public async Task When_the_visit_is_over_the_door_closes_by_itself()
    {
        var address = door.Address!;
        using var entered = await EnterAsync(phone, address);
        clock.Advance(PhoneDoor.VisitLasts - TimeSpan.FromSeconds(1));
        using var sent = await SendAsync(address, await File.ReadAllBytesAsync(SamplePhotos.PhotoPath("c01")), Visit(address));
        Assert.Equal(HttpStatusCode.OK, sent.StatusCode);

        await ClosedAfterAsync(TimeSpan.FromSeconds(1));

        await Assert.ThrowsAsync<HttpRequestException>(() => SendAsync(address, [1], "any"));
    }

    [Fact]
    public async Task An_expired_code_is_refused_however_late_the_door_closes()
    {
        var late = new SlowClock();
        await using var slow = new PhoneDoor(late);
        await slow.OpenAsync(job);
        var address = slow.Address!;
        late.Now += PhoneDoor.CodeLasts;

        using var entered = await EnterAsync(phone, address);

        Assert.Equal(HttpStatusCode.Forbidden, entered.StatusCode);
        using var page = await phone.GetAsync(new Uri(address, "/send"));
        Assert.Equal(HttpStatusCode.Forbidden, page.StatusCode);

        // And a new code lets the phone in.
        await slow.OpenAsync(job);
        using var again = await EnterAsync(phone, slow.Address!);
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
    }

    [Fact]
    public async Task A_visit_that_is_over_is_refused_however_late_the_door_closes()
    {
        var late = new SlowClock();
        await using var slow = new PhoneDoor(late);
        await slow.OpenAsync(job);
        var address = slow.Address!;
        using var entered = await EnterAsync(phone, address);
        Assert.Equal(HttpStatusCode.OK, entered.StatusCode);
        var visit = Visit(address);
        late.Now += PhoneDoor.VisitLasts;

        using var sent = await SendAsync(address, await File.ReadAllBytesAsync(SamplePhotos.PhotoPath("c01")), visit);

        Assert.Equal(HttpStatusCode.Forbidden, sent.StatusCode);
        Assert.Empty(job.Job.Photos);
    }

    [Fact]
    public async Task It_listens_at_the_address_it_was_opened_at_and_at_no_other()
    {
        await door.OpenAsync(job, IPAddress.Loopback);
        var port = door.Address!.Port;
        using var here = new TcpClient();
        await here.ConnectAsync(IPAddress.Loopback, port);

        // All of 127.0.0.0/8 is this machine (RFC 1122, 3.2.1.3), each a place to listen of its own.
        using var elsewhere = new TcpClient();
        await Assert.ThrowsAsync<SocketException>(() => elsewhere.ConnectAsync(IPAddress.Parse("127.0.0.2"), port));

        var problem = await door.OpenAsync(job, IPAddress.Parse("192.0.2.1"));
        Assert.Equal("phone-door-stuck", problem!.Code);
        Assert.Null(door.Address);
    }

    [Fact]
    public async Task Guessing_ends_the_code()
    {
        var address = door.Address!;
        for (var i = 0; i < 20; i++)
        {
            using var guess = await EnterAsync(phone, new Uri(address, "/c/GUESSGUESSGU"));
            Assert.Equal(HttpStatusCode.Forbidden, guess.StatusCode);
        }

        using var right = await EnterAsync(phone, address);
        Assert.Equal(HttpStatusCode.Forbidden, right.StatusCode);
    }

    [Fact]
    public async Task Without_the_page_a_script_a_foreign_origin_or_another_address_nothing_is_taken()
    {
        var address = door.Address!;
        using var entered = await EnterAsync(phone, address);

        using var withoutToken = await SendAsync(address, [1], null);
        Assert.Equal(HttpStatusCode.Forbidden, withoutToken.StatusCode);
        using var script = await SendAsync(address, Encoding.UTF8.GetBytes("<script>"), Visit(address));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, script.StatusCode);
        using var foreign = new HttpRequestMessage(HttpMethod.Get, new Uri(address, "/send"));
        foreign.Headers.TryAddWithoutValidation("Origin", "http://evil.example");
        using var refused = await phone.SendAsync(foreign);
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        using var named = new HttpRequestMessage(HttpMethod.Get, new Uri(address, "/send")) { Headers = { Host = "evil.example" } };
        using var misdirected = await phone.SendAsync(named);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, misdirected.StatusCode);
        using var workbench = await phone.GetAsync(new Uri(address, "/"));
        Assert.Equal(HttpStatusCode.NotFound, workbench.StatusCode);
        Assert.Empty(job.Job.Photos);
    }

    [Fact]
    public async Task A_closed_door_does_not_listen_even_while_a_photo_is_half_sent()
    {
        var address = door.Address!;
        using var entered = await EnterAsync(phone, address);
        using var half = new TcpClient();
        await half.ConnectAsync(address.Host, address.Port);
        await using var stream = half.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(
            $"POST /photos HTTP/1.1\r\nHost: {address.Authority}\r\nCookie: sectionscan-phone={Visit(address)}\r\nX-Form-Token: {Visit(address)}\r\n"
            + "Content-Type: multipart/form-data; boundary=b\r\nContent-Length: 100000\r\n\r\n--b\r\n"));

        await door.CloseAsync().WaitAsync(TimeSpan.FromSeconds(15));

        Assert.Null(door.Address);
        using var late = new TcpClient();
        await Assert.ThrowsAsync<SocketException>(() => late.ConnectAsync(address.Host, address.Port));
    }

    private async Task ClosedAfterAsync(TimeSpan time)
    {
        var closed = new TaskCompletionSource();
        door.Changed += (_, _) => closed.TrySetResult();
        clock.Advance(time);
        await closed.Task.WaitAsync(TimeSpan.FromSeconds(30));
        Assert.Null(door.Address);
    }

    private static Task<HttpResponseMessage> EnterAsync(HttpClient client, Uri address) => client.PostAsync(address, null);

    private string Visit(Uri address) => cookies.GetCookies(address)["sectionscan-phone"]!.Value;

    private async Task<HttpResponseMessage> SendAsync(Uri address, byte[] content, string? token)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(address, "/photos"));
        request.Content = new MultipartFormDataContent { { new ByteArrayContent(content), "photo", "c01.jpg" } };
        if (token is not null)
        {
            request.Headers.Add("X-Form-Token", token);
        }

        return await phone.SendAsync(request);
    }

    /// <summary>A clock whose timers never ring.</summary>
    private sealed class SlowClock : TimeProvider
    {
        private readonly TimeProvider still = new FakeTimeProvider();

        public DateTimeOffset Now { get; set; } = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
            still.CreateTimer(callback, state, dueTime, period);
    }
}
