using System.Net;
using System.Text;
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
    private readonly SetClock clock = new();
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
        var address = door.Addresses[0];
        using var entered = await phone.GetAsync(address);
        Assert.Equal(HttpStatusCode.OK, entered.StatusCode);
        Assert.Contains("Send photos", await entered.Content.ReadAsStringAsync(), StringComparison.Ordinal);

        using var sent = await SendAsync(address, await File.ReadAllBytesAsync(SamplePhotos.PhotoPath("c01")), Visit(address));
        Assert.Equal(HttpStatusCode.OK, sent.StatusCode);
        Assert.Equal("c01.jpg", Assert.Single(job.Job.Photos).GivenName);

        using var stranger = new HttpClient();
        using var again = await stranger.GetAsync(address);
        Assert.Equal(HttpStatusCode.Forbidden, again.StatusCode);
    }

    [Fact]
    public async Task An_expired_code_and_an_expired_visit_are_refused()
    {
        var address = door.Addresses[0];
        clock.Pass(PhoneDoor.CodeLasts);
        using var late = await phone.GetAsync(address);
        Assert.Equal(HttpStatusCode.Forbidden, late.StatusCode);

        await door.OpenAsync(job);
        address = door.Addresses[0];
        using var entered = await phone.GetAsync(address);
        clock.Pass(PhoneDoor.VisitLasts);
        using var sent = await SendAsync(address, [1], Visit(address));
        Assert.Equal(HttpStatusCode.Forbidden, sent.StatusCode);
    }

    [Fact]
    public async Task Guessing_ends_the_code()
    {
        var address = door.Addresses[0];
        for (var i = 0; i < 20; i++)
        {
            using var guess = await phone.GetAsync(new Uri(address, "/c/GUESSGUESSGU"));
            Assert.Equal(HttpStatusCode.Forbidden, guess.StatusCode);
        }

        using var right = await phone.GetAsync(address);
        Assert.Equal(HttpStatusCode.Forbidden, right.StatusCode);
    }

    [Fact]
    public async Task Without_the_page_a_script_a_foreign_origin_or_another_address_nothing_is_taken()
    {
        var address = door.Addresses[0];
        using var entered = await phone.GetAsync(address);

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
    public async Task A_closed_door_does_not_listen()
    {
        var address = door.Addresses[0];

        await door.CloseAsync();

        Assert.Empty(door.Addresses);
        await Assert.ThrowsAsync<HttpRequestException>(() => phone.GetAsync(address));
    }

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

    private sealed class SetClock : TimeProvider
    {
        private DateTimeOffset now = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);

        public void Pass(TimeSpan time) => now += time;

        public override DateTimeOffset GetUtcNow() => now;
    }
}
