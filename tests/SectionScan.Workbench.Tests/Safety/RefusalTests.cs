using System.Net;
using System.Net.Sockets;
using System.Net.WebSockets;
using System.Text;
using Microsoft.Playwright;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.Tests.Hosting;

namespace SectionScan.Workbench.Tests.Safety;

/// <summary>What must be refused, and that the workbench goes on working after each.</summary>
[Collection(SharedWorkbench.Name)]
public sealed class RefusalTests(RunningWorkbench workbench) : IAsyncLifetime
{
    private static readonly HttpClient Client = new(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false });

    public Task InitializeAsync() => Task.CompletedTask;

    /// <summary>After whatever a test did: the first page comes, a page of ours may open its connection, and photos are shown.</summary>
    public async Task DisposeAsync()
    {
        Assert.Contains("Port sections from photographs", await Client.GetStringAsync(workbench.Address), StringComparison.Ordinal);
        using var socket = new ClientWebSocket();
        socket.Options.SetRequestHeader("Origin", workbench.Address.GetLeftPart(UriPartial.Authority));
        await socket.ConnectAsync(new UriBuilder(workbench.Address) { Scheme = "ws", Path = "/_blazor" }.Uri, CancellationToken.None);
        Assert.Equal(WebSocketState.Open, socket.State);
        using var photo = await Client.GetAsync(new Uri(workbench.Address, $"/job/{workbench.Digitised}/photo/photo-1/small"));
        Assert.Equal(HttpStatusCode.OK, photo.StatusCode);
    }

    [Theory]
    [InlineData("evil.example")]
    [InlineData("127.0.0.1.evil.example")]
    [InlineData("localhost:1")]
    public async Task A_foreign_host_name(string host)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, workbench.Address) { Headers = { Host = host } };

        using var response = await Client.SendAsync(request);

        Assert.Equal(HttpStatusCode.MisdirectedRequest, response.StatusCode);
    }

    [Theory]
    [InlineData("http://evil.example")]
    [InlineData("null")]
    [InlineData("http://127.0.0.1:1")]
    public async Task A_foreign_origin(string origin)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(workbench.Address, $"/job/{workbench.Digitised}/photos"));
        request.Headers.TryAddWithoutValidation("Origin", origin);

        using var response = await Client.SendAsync(request);

        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
    }

    /// <summary>Fetch Metadata (W3C): a browser tells whence it asks even where it sends no origin, as for a picture.</summary>
    [Theory]
    [InlineData("cross-site", "no-cors", "image", HttpStatusCode.Forbidden)]
    [InlineData("same-site", "no-cors", "script", HttpStatusCode.Forbidden)]
    [InlineData("cross-site", "navigate", "iframe", HttpStatusCode.Forbidden)]
    [InlineData("cross-site", "navigate", "document", HttpStatusCode.OK)]
    [InlineData("same-origin", "no-cors", "image", HttpStatusCode.OK)]
    public async Task What_another_site_shows_or_frames_of_ours(string site, string mode, string destination, HttpStatusCode expected)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, workbench.Address);
        request.Headers.Add("Sec-Fetch-Site", site);
        request.Headers.Add("Sec-Fetch-Mode", mode);
        request.Headers.Add("Sec-Fetch-Dest", destination);

        using var response = await Client.SendAsync(request);

        Assert.Equal(expected, response.StatusCode);
    }

    [Fact]
    public async Task A_websocket_from_another_site()
    {
        using var socket = new ClientWebSocket();
        socket.Options.SetRequestHeader("Origin", "http://evil.example");
        socket.Options.CollectHttpResponseDetails = true;

        await Assert.ThrowsAsync<WebSocketException>(() =>
            socket.ConnectAsync(new UriBuilder(workbench.Address) { Scheme = "ws", Path = "/_blazor" }.Uri, CancellationToken.None));

        Assert.Equal(HttpStatusCode.Forbidden, socket.HttpStatusCode);
    }

    [Fact]
    public async Task An_upload_without_the_token_of_our_own_page()
    {
        using var content = new MultipartFormDataContent { { new ByteArrayContent([1, 2, 3]), "photo", "a.jpg" } };

        using var response = await Client.PostAsync(new Uri(workbench.Address, $"/job/{workbench.Digitised}/photos"), content);

        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
    }

    [Theory]
    [InlineData("Content-Length: 3221225472")]
    [InlineData("Transfer-Encoding: chunked")]
    public async Task An_upload_of_three_gigabytes_or_of_nobody_knows_how_much_before_it_is_read(string length)
    {
        using var connection = new TcpClient();
        await connection.ConnectAsync(workbench.Address.Host, workbench.Address.Port);
        await using var stream = connection.GetStream();
        var page = await workbench.PageAsync($"/job/{workbench.Digitised}/capture");
        var token = await page.Locator("input[name=__RequestVerificationToken]").InputValueAsync();
        var cookies = string.Join("; ", (await page.Context.CookiesAsync()).Select(each => $"{each.Name}={each.Value}"));
        await page.Context.CloseAsync();
        var head = $"POST /job/{workbench.Digitised}/photos HTTP/1.1\r\nHost: {workbench.Address.Authority}\r\nCookie: {cookies}\r\nX-Form-Token: {token}\r\n"
            + $"Content-Type: multipart/form-data; boundary=b\r\n{length}\r\n\r\n";
        await stream.WriteAsync(Encoding.ASCII.GetBytes(head));

        using var reader = new StreamReader(stream);
        var status = await reader.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(60));

        Assert.Contains(" 413 ", status + " ", StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_picture_of_more_pixels_than_fit_into_memory()
    {
        // A bitmap's head that speaks of 60 000 × 60 000 pixels; they would fill 10 GB.
        var bytes = new byte[200];
        "BM"u8.CopyTo(bytes);
        BitConverter.GetBytes(54).CopyTo(bytes, 10);
        BitConverter.GetBytes(40).CopyTo(bytes, 14);
        BitConverter.GetBytes(60_000).CopyTo(bytes, 18);
        BitConverter.GetBytes(60_000).CopyTo(bytes, 22);
        bytes[26] = 1;
        bytes[28] = 24;
        var page = await workbench.PageAsync();
        var id = await workbench.BeginAsync(page, "Pixels");
        await workbench.GoAsync(page, $"/job/{id}/capture");

        await page.SetInputFilesAsync("#photos", new FilePayload { Name = "huge.bmp", MimeType = "image/bmp", Buffer = bytes });

        await page.Locator(".upload-status .problem").WaitForAsync();
        Assert.Contains("pixels", await page.Locator(".upload-status").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(Path.Combine(workbench.Folder, id, "photos")));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task An_archive_for_the_library_that_is_none_and_one_without_the_token_of_our_own_page()
    {
        using var content = new MultipartFormDataContent { { new ByteArrayContent([1, 2, 3]), "archive", "a.zip" } };
        using var response = await Client.PostAsync(new Uri(workbench.Address, "/library/import"), content);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);

        var page = await workbench.PageAsync("/library");
        await page.GetByText("Take sections in from another shop").ClickAsync();
        await page.SetInputFilesAsync("#archive-file", new FilePayload { Name = "../a.zip", MimeType = "application/zip", Buffer = Encoding.UTF8.GetBytes("PK but no archive") });

        await page.Locator(".upload-status .problem").WaitForAsync();
        Assert.Empty(Directory.EnumerateFiles(workbench.Folder, "*.part"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_script_named_as_a_photo()
    {
        var id = await BeginAsync("Script");

        var (status, answer) = await SendAsync(id, "photo.jpg", Encoding.UTF8.GetBytes("#!/bin/sh\nrm -rf /\n"));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("not a picture in a format that can be read", answer, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(Path.Combine(workbench.Folder, id, "photos")));
    }

    /// <summary>A real photo: what is refused is the name alone, as RFC 7578, 4.2 tells receivers to (no directory part of a file name).</summary>
    [Theory]
    [InlineData("../evil.jpg")]
    [InlineData("../../../../evil.jpg")]
    [InlineData("..\\..\\evil.jpg")]
    [InlineData("/tmp/evil.jpg")]
    public async Task A_name_that_leads_elsewhere(string name)
    {
        var id = await BeginAsync("Name");

        var (status, answer) = await SendAsync(id, name, await File.ReadAllBytesAsync(SamplePhotos.PhotoPath("c01")));

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("\"evil.jpg\"", answer, StringComparison.Ordinal);
        Assert.Equal("photo-1.jpg", Path.GetFileName(Assert.Single(Directory.GetFiles(Path.Combine(workbench.Folder, id, "photos")))));
        Assert.Empty(Directory.EnumerateFileSystemEntries(workbench.Folder, "*evil*", SearchOption.AllDirectories));
        Assert.False(File.Exists("/tmp/evil.jpg"));
    }

    [Theory]
    [InlineData("/job/..%2f..%2fetc/photo/passwd")]
    [InlineData("/job/{0}/photo/..%2fjob.json")]
    [InlineData("/job/{0}/photo/photo-99")]
    [InlineData("/job/{0}/section/photo-1-1/..%2fjob.json")]
    [InlineData("/assets/..%2fworkbench.css")]
    [InlineData("/target/sheet/a4/exe")]
    public async Task An_address_that_names_no_thing_of_ours(string path)
    {
        using var response = await Client.GetAsync(new Uri(workbench.Address.ToString().TrimEnd('/') + path.Replace("{0}", workbench.Digitised, StringComparison.Ordinal)));

        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
    }

    [Fact]
    public async Task Scripts_and_styles_within_the_page()
    {
        using var response = await Client.GetAsync(workbench.Address);

        var policy = string.Join(';', response.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("script-src 'self'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);

        var page = await workbench.PageAsync();
        Assert.Equal("held back", await page.EvaluateAsync<string>(
            "() => { const s = document.createElement('script'); s.textContent = 'window.done = 1'; document.body.append(s); return window.done ? 'ran' : 'held back'; }"));
        Assert.Equal("held back", await page.EvaluateAsync<string>(
            "() => { document.body.setAttribute('style', 'opacity: 0.5'); return getComputedStyle(document.body).opacity === '1' ? 'held back' : 'ran'; }"));
        await page.Context.CloseAsync();
    }

    /// <summary>A job of its own, begun in a page.</summary>
    private async Task<string> BeginAsync(string name)
    {
        var page = await workbench.PageAsync();
        var id = await workbench.BeginAsync(page, name);
        await page.Context.CloseAsync();
        return id;
    }

    /// <summary>Sends a file as a program would, with the token of our own page: no browser makes its name harmless.</summary>
    private async Task<(HttpStatusCode Status, string Answer)> SendAsync(string id, string name, byte[] bytes)
    {
        var page = await workbench.PageAsync($"/job/{id}/capture");
        var token = await page.Locator("input[name=__RequestVerificationToken]").InputValueAsync();
        var cookies = string.Join("; ", (await page.Context.CookiesAsync()).Select(each => $"{each.Name}={each.Value}"));
        await page.Context.CloseAsync();
        var head = $"--b\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"{name.Replace("\\", "\\\\", StringComparison.Ordinal)}\"\r\nContent-Type: image/jpeg\r\n\r\n";
        using var content = new ByteArrayContent([.. Encoding.ASCII.GetBytes(head), .. bytes, .. "\r\n--b--\r\n"u8]);
        content.Headers.TryAddWithoutValidation("Content-Type", "multipart/form-data; boundary=b");
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(workbench.Address, $"/job/{id}/photos")) { Content = content };
        request.Headers.Add("X-Form-Token", token);
        request.Headers.Add("Cookie", cookies);
        using var response = await Client.SendAsync(request);
        return (response.StatusCode, await response.Content.ReadAsStringAsync());
    }
}
