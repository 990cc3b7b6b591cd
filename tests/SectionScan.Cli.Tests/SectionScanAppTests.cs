using SectionScan.Cli.Options;
using SectionScan.Testing.Golden;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Tests;

public class SectionScanAppTests
{
    private const string Project = "SectionScan.Cli.Tests";

    [Theory]
    [InlineData("unknown-command.txt", "verson")]
    [InlineData("unknown-option.txt", "version", "--jsn")]
    [InlineData("unexpected-argument.txt", "version", "extra")]
    [InlineData("option-before-command.txt", "--json")]
    [InlineData("value-for-a-flag.txt", "version", "--json=")]
    public async Task A_wrong_command_line_ends_with_2_and_says_what_where_and_what_to_do(string expectation, params string[] arguments)
    {
        var run = await CommandLine.RunAsync(arguments);

        Assert.Equal(ExitCode.WrongUsage, run.ExitCode);
        Assert.Empty(run.Output);
        GoldenFile.Matches(Project, expectation, run.Error);
    }

    [Theory]
    [InlineData("missing-argument.txt", "measure")]
    [InlineData("missing-value.txt", "measure", "a.jpg", "--thickness")]
    [InlineData("missing-value-of-a-name.txt", "measure", "a.jpg", "--out")]
    [InlineData("missing-value-between.txt", "measure", "--out", "--json", "a.jpg")]
    [InlineData("mistyped-option.txt", "measure", "a.jpg", "--thicknes", "6")]
    [InlineData("mistyped-option-before-argument.txt", "measure", "--bogus", "a.jpg")]
    [InlineData("mistyped-option-with-equals.txt", "measure", "a.jpg", "--thicknes=6")]
    [InlineData("unknown-short-option.txt", "measure", "a.jpg", "-q")]
    [InlineData("after-two-dashes.txt", "measure", "a.jpg", "--", "b.jpg")]
    [InlineData("not-a-number.txt", "measure", "a.jpg", "--thickness", "6,5")]
    [InlineData("unknown-unit.txt", "measure", "a.jpg", "--units", "cm")]
    [InlineData("print-ratio-not-two-numbers.txt", "measure", "a.jpg", "--print-ratio", "1.0")]
    [InlineData("print-ratio-out-of-range.txt", "measure", "a.jpg", "--print-ratio", "99.8,100.2")]
    [InlineData("failed-validation.txt", "measure", "a.jpg", "--thickness", "-3")]
    public async Task A_wrong_value_ends_with_2_before_the_command_starts(string expectation, params string[] arguments)
    {
        var run = await CommandLine.RunAsync(AddMeasure, arguments);

        Assert.Equal(ExitCode.WrongUsage, run.ExitCode);
        Assert.Empty(run.Output);
        GoldenFile.Matches(Project, expectation, run.Error);
    }

    [Fact]
    public async Task Values_reach_the_command_as_they_were_typed()
    {
        var run = await CommandLine.RunAsync(
            AddMeasure, "measure", "a.jpg", "b.jpg", "--thickness", "6.5", "--units", "IN", "--print-ratio", "0.998,1.002");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal("a.jpg b.jpg 6.5 in 0.998,1.002\n", run.Output);
        Assert.Empty(run.Error);
    }

    [Fact]
    public async Task A_defect_is_told_in_one_block_without_a_stack_trace()
    {
        var run = await CommandLine.RunAsync(
            commands => commands.AddDelegate("fail", (_, _) => throw new InvalidOperationException("The lid is off.\nSecond line.")), "fail");

        Assert.Equal(ExitCode.InternalError, run.ExitCode);
        Assert.Empty(run.Output);
        GoldenFile.Matches(Project, "defect.txt", run.Error.Replace(SectionScanApp.Version, "VERSION", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_stopped_command_ends_with_130()
    {
        using var stop = new CancellationTokenSource();
        Action<IConfigurator> addCommands = commands => commands.AddAsyncDelegate("wait", async (_, token) =>
        {
            await stop.CancelAsync();
            await Task.Delay(Timeout.Infinite, token);
            return 0;
        });

        var run = await CommandLine.RunAsync(addCommands, stop.Token, "wait");

        Assert.Equal(ExitCode.Stopped, run.ExitCode);
        Assert.Equal("stopped  Stopped before the end. What was finished is kept.\n", run.Error);
    }

    [Fact]
    public async Task A_group_of_commands_without_one_of_them_is_wrong_usage_and_shows_what_there_is()
    {
        Action<IConfigurator> addCommands = commands => commands.AddBranch("shelf", shelf =>
        {
            shelf.SetDescription("Keeps things.");
            shelf.AddDelegate("put", (_, _) => 0).WithDescription("Puts one thing there.");
        });

        var run = await CommandLine.RunAsync(addCommands, "shelf");

        Assert.Equal(ExitCode.WrongUsage, run.ExitCode);
        Assert.Contains("Puts one thing there.", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData]
    [InlineData("--help")]
    public async Task Help_lists_the_commands_on_standard_output(params string[] arguments)
    {
        var run = await CommandLine.RunAsync(arguments);

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Empty(run.Error);
        GoldenFile.Matches(Project, "help.txt", run.Output);
    }

    [Fact]
    public async Task Version_is_the_assembly_version()
    {
        var run = await CommandLine.RunAsync("--version");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal(typeof(SectionScanApp).Assembly.GetName().Version!.ToString(3) + "\n", run.Output);
    }

    private static void AddMeasure(IConfigurator commands) => commands.AddCommand<MeasureCommand>("measure");

    private sealed class MeasureSettings : OutputSettings
    {
        [CommandArgument(0, "<PHOTO>")]
        public required string[] Photos { get; init; }

        [CommandOption("--thickness <MM>")]
        public double ThicknessMm { get; init; }

        [CommandOption("--out <DIR>")]
        public string? Folder { get; init; }

        [CommandOption("--units <UNIT>")]
        public UnitOption Units { get; init; }

        [CommandOption("--print-ratio <X,Y>")]
        public PrintRatioOption PrintRatio { get; init; } = PrintRatioOption.True;

        public override ValidationResult Validate() => ThicknessMm < 0
            ? ValidationResult.Error("The thickness of a slice cannot be negative.")
            : ValidationResult.Success();
    }

    private sealed class MeasureCommand(IAnsiConsole answers) : Command<MeasureSettings>
    {
        public override int Execute(CommandContext context, MeasureSettings settings, CancellationToken cancellationToken)
        {
            var thickness = settings.ThicknessMm.ToString(System.Globalization.CultureInfo.InvariantCulture);
            answers.WriteLine($"{string.Join(' ', settings.Photos)} {thickness} {settings.Units} {settings.PrintRatio}");
            return ExitCode.Done;
        }
    }
}
