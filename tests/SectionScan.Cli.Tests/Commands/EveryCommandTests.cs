using SectionScan.Cli.Options;
using SectionScan.Cli.Terminals;
using Spectre.Console.Cli;
using Spectre.Console.Cli.Help;
using Spectre.Console.Rendering;

namespace SectionScan.Cli.Tests.Commands;

public class EveryCommandTests
{
    [Fact]
    public async Task Every_command_has_a_description_an_example_and_described_options()
    {
        var model = await ModelOfAsync(null);

        Assert.NotEmpty(model.Commands);
        Assert.Empty(FaultsOf(model, string.Empty));
    }

    [Fact]
    public async Task A_command_without_help_would_be_noticed()
    {
        var model = await ModelOfAsync(commands => commands.AddBranch("shelf", shelf => shelf.AddCommand<Bare>("put")));

        Assert.Equal(
            [" shelf: no description", " shelf put: no description", " shelf put: no example", " shelf put: thing is not described"],
            FaultsOf(model, string.Empty));
    }

    [Fact]
    public async Task Every_command_shows_its_help_on_standard_output()
    {
        var model = await ModelOfAsync(null);

        foreach (var command in model.Commands.Where(command => !command.IsHidden))
        {
            var run = await CommandLine.RunAsync(command.Name, "--help");

            Assert.Equal(ExitCode.Done, run.ExitCode);
            Assert.Contains($"{SectionScanApp.Name} {command.Name}", run.Output, StringComparison.Ordinal);
            Assert.Empty(run.Error);
        }
    }

    private static IEnumerable<string> FaultsOf(ICommandContainer container, string path)
    {
        foreach (var command in container.Commands.Where(command => !command.IsHidden))
        {
            var name = $"{path} {command.Name}";
            if (string.IsNullOrWhiteSpace(command.Description))
            {
                yield return $"{name}: no description";
            }

            if (!command.IsBranch && command.Examples.Count == 0)
            {
                yield return $"{name}: no example";
            }

            foreach (var parameter in command.Parameters.Where(p => !p.IsHidden && string.IsNullOrWhiteSpace(p.Description)))
            {
                var shown = parameter is ICommandOption option ? option.LongNames[0] : ((ICommandArgument)parameter).Value;
                yield return $"{name}: {shown} is not described";
            }

            foreach (var fault in FaultsOf(command, name))
            {
                yield return fault;
            }
        }
    }

    // Help is written from the model of all commands: a help provider sees it.
    private static async Task<ICommandModel> ModelOfAsync(Action<IConfigurator>? addCommands)
    {
        using var text = new StringWriter();
        var keeper = new ModelKeeper();
        Action<IConfigurator> addAll = commands =>
        {
            (addCommands ?? SectionScanApp.AddCommands)(commands);
            commands.SetHelpProvider(keeper);
        };
        await SectionScanApp.RunAsync(["--help"], Terminal.ForWriters(text, text), addAll, CancellationToken.None);
        return keeper.Model ?? throw new InvalidOperationException("No help was asked for.");
    }

    private sealed class ModelKeeper : IHelpProvider
    {
        public ICommandModel? Model { get; private set; }

        public IEnumerable<IRenderable> Write(ICommandModel model, ICommandInfo? command)
        {
            Model = model;
            return [];
        }
    }

    private sealed class BareSettings : OutputSettings
    {
        [CommandOption("--thing <NAME>")]
        public string? Thing { get; init; }
    }

    private sealed class Bare : Command<BareSettings>
    {
        public override int Execute(CommandContext context, BareSettings settings, CancellationToken cancellationToken) => ExitCode.Done;
    }
}
