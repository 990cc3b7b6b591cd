using System.Text.Json;
using Microsoft.Playwright;
using SectionScan.Testing.Repository;

namespace SectionScan.Workbench.Tests.Journeys;

/// <summary>A person without a mouse: Tab from control to control, and what is learnt at each.</summary>
internal static class KeyboardWalk
{
    private const int MostStops = 400;

    /// <summary>What has the focus.</summary>
    /// <param name="Number">A number of its own.</param>
    /// <param name="Name">Its kind and name.</param>
    /// <param name="Indicator">What is wrong with the sign of the focus, or null.</param>
    /// <param name="IsCovered">True when something else lies on it.</param>
    /// <param name="Width">Of what answers to a finger, CSS px; null for a link within a line of text.</param>
    /// <param name="Height">The same for its height.</param>
    /// <param name="IsPressed">True for what is pressed or typed into, other than radio buttons and check boxes.</param>
    /// <param name="IsClosed">True for a summary whose details are closed.</param>
    public sealed record Stop(int Number, string Name, string? Indicator, bool IsCovered, double? Width, double? Height, bool IsPressed, bool IsClosed);

    /// <summary>A control that must be reached.</summary>
    public sealed record Control(int Number, string Name);

    /// <summary>One whole round by Tab, opening what is closed on the way: the stops, from the first of the page on, and the controls that
    /// there are at the end.</summary>
    public static async Task<(IReadOnlyList<Stop> Stops, IReadOnlyList<Control> Controls)> RoundAsync(IPage page)
    {
        await BeginAsync(page);
        var stops = new List<Stop>();
        var seen = new HashSet<int>();
        for (var i = 0; i < MostStops; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await FocusAsync(page) is not { } stop)
            {
                continue; // between the last control and the first lies the browser itself
            }

            if (!seen.Add(stop.Number))
            {
                break;
            }

            stops.Add(stop);
            if (stop.IsClosed)
            {
                await page.Keyboard.PressAsync("Enter");
            }
        }

        var controls = await AskAsync<Control[]>(page, "order");
        var first = controls.Length == 0 ? -1 : stops.FindIndex(stop => stop.Number == controls[0].Number);
        return ([.. stops.Skip(Math.Max(0, first)), .. stops.Take(Math.Max(0, first))], controls);
    }

    /// <summary>Goes on with Tab until what has the focus is called so; fails when a whole round does not meet it.</summary>
    /// <param name="page">The page.</param>
    /// <param name="name">A part of "button "Undo"", as <see cref="Stop.Name"/> writes it.</param>
    /// <param name="key">Tab, or Shift+Tab to go back.</param>
    public static async Task GoToAsync(IPage page, string name, string key = "Tab")
    {
        await BeginAsync(page);
        var met = new List<string>();
        for (var i = 0; i < MostStops; i++)
        {
            await page.Keyboard.PressAsync(key);
            var stop = await FocusAsync(page);
            if (stop?.Name.Contains(name, StringComparison.Ordinal) == true)
            {
                return;
            }

            met.Add(stop?.Name ?? "(nothing)");
        }

        Assert.Fail($"{name} is not met with {key}; met were {string.Join(", ", met.Distinct())}");
    }

    private static async Task BeginAsync(IPage page) => await page.EvaluateAsync(
        await File.ReadAllTextAsync(RepositoryFolder.PathOf("tests", "SectionScan.Workbench.Tests", "Journeys", "keyboard-walk.js")));

    private static Task<Stop?> FocusAsync(IPage page) => AskAsync<Stop?>(page, "focus");

    // A frame later: the browser scrolls to what has the focus when it draws.
    private static async Task<T> AskAsync<T>(IPage page, string what) => JsonSerializer.Deserialize<T>(
        await page.EvaluateAsync<string>($"new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(JSON.stringify(window.keyboardWalk.{what}())))))"), JsonSerializerOptions.Web)!;
}
