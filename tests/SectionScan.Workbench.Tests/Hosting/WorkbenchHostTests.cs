using SectionScan.Workbench.Hosting;

namespace SectionScan.Workbench.Tests.Hosting;

public sealed class WorkbenchHostTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-host-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task Two_workbenches_never_work_on_one_folder()
    {
        var options = new WorkbenchOptions(folder, Path.Combine(folder, "library.db"), null, [], "sectionscan test", TimeProvider.System);

        await using (var first = (await WorkbenchHost.StartAsync(options)).ValueOrThrow())
        {
            Assert.False((await WorkbenchHost.StartAsync(options)).TryGet(out _, out var problem));
            Assert.Equal("jobs-folder-in-use", problem.Code);

            // A port that is taken leaves the other folder free.
            var elsewhere = options with { JobsFolder = Path.Combine(folder, "other"), Port = first.Address.Port };
            Assert.False((await WorkbenchHost.StartAsync(elsewhere)).TryGet(out _, out problem));
            Assert.Equal("port-taken", problem.Code);
            await using var free = (await WorkbenchHost.StartAsync(elsewhere with { Port = null })).ValueOrThrow();
        }

        await using var second = (await WorkbenchHost.StartAsync(options)).ValueOrThrow();
        using var client = new HttpClient();
        Assert.Contains("Port sections", await client.GetStringAsync(second.Address), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_address_that_leads_nowhere_says_so_in_words()
    {
        await using var host = (await WorkbenchHost.StartAsync(new(folder, Path.Combine(folder, "library.db"), null, [], "sectionscan test", TimeProvider.System))).ValueOrThrow();
        using var client = new HttpClient();

        using var answer = await client.GetAsync(new Uri(host.Address, "/nonsense"));

        Assert.Equal(System.Net.HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("There is nothing here", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }
}
