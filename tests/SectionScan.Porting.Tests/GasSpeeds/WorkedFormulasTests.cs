using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Engines;
using SectionScan.Porting.GasSpeeds;
using SectionScan.Porting.Judgements;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Schedules;
using SectionScan.Porting.Tests.Ports;

namespace SectionScan.Porting.Tests.GasSpeeds;

public sealed class WorkedFormulasTests
{
    private static readonly EngineData Engine = new(68, 66, 2, 1500, 8000) { RodMm = 120 };
    private static readonly ValveData Valve = new(33, 5.5) { SeatWidthMm = 1.5 };

    public static TheoryData<string> Names => [.. WorkedFormulas.All.Select(each => each.Quantity)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_worked_example_comes_out_to_six_digits(string quantity)
    {
        var formula = WorkedFormulas.All.Single(each => each.Quantity == quantity);

        Assert.Equal(1, formula.Computed / formula.Expected, 6);
        Assert.NotEmpty(formula.Source);
    }

    [Fact]
    public void The_speed_of_sound_is_that_of_the_standard_atmosphere() =>
        // ISO 2533 states 340.294 m/s at 15 °C.
        Assert.Equal(340.294, Gas.SoundSpeedMPerS(15), 3);

    [Theory]
    [InlineData(600, 93.213148)]
    [InlineData(800, 69.909861)]
    public void Gas_speed_goes_with_one_over_the_area(double areaMm2, double expected) =>
        Assert.Equal(expected, PortGasSpeed.MeanMPerS(Engine, areaMm2, 7000), 6);

    [Fact]
    public void A_valve_open_for_half_a_turn_gives_the_piston_speed_form() =>
        Assert.Equal(PortGasSpeed.MeanMPerS(Engine, 700, 7000), PortGasSpeed.MeanWhileOpenMPerS(Engine, 700, 7000, 180), 9);

    [Fact]
    public void The_peak_of_the_piston_is_the_largest_of_all_angles()
    {
        var (peak, _) = PistonMotion.Peak(66, 120, 7000);

        // The same by moving the piston: s = r cos θ + √(l² − r² sin² θ), differences over 0.01° of crank.
        var step = double.DegreesToRadians(0.01);
        var largest = Enumerable.Range(1, 17999).Max(i => Math.Abs(Place((i + 1) * step) - Place((i - 1) * step)) / (2 * step));
        Assert.Equal(largest / 1000 * 7000 * 2 * Math.PI / 60, peak, 4);

        static double Place(double angle) => (33 * Math.Cos(angle)) + Math.Sqrt((120 * 120) - Math.Pow(33 * Math.Sin(angle), 2));
    }

    [Fact]
    public void The_true_least_area_is_continuous_where_its_formula_changes()
    {
        // w/(sin β cos β) = 3 mm.
        Assert.Equal(ValveAreas.LeastMm2(Valve, 3 - 1e-7)!.Value, ValveAreas.LeastMm2(Valve, 3 + 1e-7)!.Value, 3);
        Assert.Null(ValveAreas.LeastMm2(new(33, 5.5), 3));
    }

    [Fact]
    public void Two_valves_halve_the_index_and_two_ports_halve_the_speed()
    {
        var one = InletMachIndex.Of(Engine, Valve, 0.35, 7000);

        Assert.Equal(one / 2, InletMachIndex.Of(Engine, Valve with { Count = 2 }, 0.35, 7000), 9);
        Assert.Equal(one / 2, InletMachIndex.Of(Engine with { PortsPerCylinder = 2 }, Valve, 0.35, 7000), 9);
        Assert.Equal(PortGasSpeed.MeanMPerS(Engine, 700, 7000) / 2, PortGasSpeed.MeanMPerS(Engine with { PortsPerCylinder = 2 }, 700, 7000), 9);
    }

    [Fact]
    public void Flow_on_the_bench_gives_a_speed_at_each_area() =>
        // 100 cfm = 0.04719474432 m³/s through 700 mm².
        Assert.Equal(67.42106331, FlowBench.MeanMPerS(100, 700), 7);

    [Fact]
    public void A_port_too_large_for_its_torque_says_what_is_lost()
    {
        // 15.4·5000/7000 = 11 m/s of piston; 11·3631.68/800 = 49.94 m/s.
        var found = Judge(800, Engine with { PeakTorqueRpm = 5000 }).Single(each => each.Code == "mean-speed-low");

        Assert.Equal(JudgementLevel.Outside, found.Level);
        Assert.Contains("49.9 m/s", found.Finding.ToString(), StringComparison.Ordinal);
        Assert.Contains("low-speed torque is lost", found.Consequence.ToString(), StringComparison.Ordinal);
        Assert.Contains("For 60 m/s the least section would be 666 mm²", found.Consequence.ToString(), StringComparison.Ordinal);
        Assert.Contains("common practice, no source", found.Basis, StringComparison.Ordinal);
    }

    [Fact]
    public void A_port_too_small_for_its_power_says_so()
    {
        // 15.4·3631.68/450 = 124.3 m/s at 7000.
        var found = Judge(450, Engine with { PeakPowerRpm = 7000 }).Single(each => each.Code == "mean-speed-high");

        Assert.Contains("124.3 m/s", found.Finding.ToString(), StringComparison.Ordinal);
        Assert.Contains("too small", found.Finding.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_index_tells_where_breathing_suffers()
    {
        var found = Judge(700, Engine, Valve, 0.35).Single(each => each.Code == "mach-index-high");

        // Field guide: 0.5 at 6430, 0.6 at 7716 1/min.
        Assert.Contains("passes 0.5 at 6430 and 0.6 at 7716 1/min", found.Finding.ToString(), StringComparison.Ordinal);
        Assert.Equal(JudgementLevel.Look, Judge(700, Engine, Valve).Single(each => each.Code == "mach-index-high").Level);
    }

    // Piston 11 m/s at 5000 and 15.4 m/s at 7000 1/min; areas for the limits by hand, 3631.68 mm² of piston: peak torque 11·3631.68/75 = 533 to
    // 11·3631.68/60 = 666 mm²; peak power 15.4·3631.68/110 = 508 to 15.4·3631.68/80 = 699 mm². What suits both: 533 to 666 mm².
    [Theory]
    [InlineData(500, "port-size-small", "The port is too small: opening it there toward 533 mm² lowers the losses.")]
    [InlineData(600, "port-size-usual", "Leave the size of the port as it is.")]
    [InlineData(800, "port-size-large", "Take nothing more off there.")]
    public void What_peak_torque_and_peak_power_ask_for_is_taken_together_first_of_all(double areaMm2, string code, string consequence)
    {
        var first = Judge(areaMm2, Engine with { PeakTorqueRpm = 5000, PeakPowerRpm = 7000 })[0];

        Assert.Equal(code, first.Code);
        Assert.Contains("533 mm² to 666 mm² would suit peak torque (5000 1/min) and peak power (7000 1/min)", first.Finding.ToString(), StringComparison.Ordinal);
        Assert.EndsWith(consequence, first.Consequence.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_port_that_is_too_small_below_the_speed_where_the_valve_is_the_limit_is_told_both_without_contradiction()
    {
        // Field guide: the index passes 0.5 at 6430 1/min.
        var found = Judge(500, Engine with { PeakTorqueRpm = 5000 }, Valve, 0.35);

        Assert.EndsWith("From about 6430 1/min on the valve is the limit, and a larger port alone brings nothing there.", found[0].Consequence.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(found, each => each.Consequence.ToString().Contains("does not help", StringComparison.Ordinal));
        Assert.Contains("for that engine speed", found.Single(each => each.Code == "mean-speed-high").Finding.ToString(), StringComparison.Ordinal);

        // With a valve half as large the limit lies below the speed in question: 6430/4 = 1608 1/min.
        Assert.Contains("look at the valve first", Judge(500, Engine with { PeakTorqueRpm = 5000 }, Valve with { DiameterMm = 16.5 }, 0.35)[0].Consequence.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Speeds_that_no_one_size_suits_are_left_to_be_decided()
    {
        // Peak torque at 3000 (piston 6.6 m/s): 6.6·3631.68/60 = 399 mm² at most; peak power at 7000: 508 mm² at least.
        var first = Judge(450, Engine with { PeakTorqueRpm = 3000, PeakPowerRpm = 7000 })[0];

        Assert.Equal("port-size-compromise", first.Code);
        Assert.Contains("508 mm² would be wanted for the one and 399 mm² for the other", first.Consequence.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Throat_and_least_section_are_judged_by_their_ratios()
    {
        var codes = Judge(500, Engine, Valve with { ThroatMm = 30.5 }).Select(each => each.Code).ToList();

        Assert.Contains("throat-large", codes);
        Assert.Contains("least-section-small", codes);
    }

    [Fact]
    public void An_exhaust_port_has_no_inlet_limits() =>
        Assert.Empty(GasSpeedJudgements.Of(AreaSchedule.Of(TestPorts.OfAreas((0, 800), (50, 800))), PortKind.Exhaust, Engine with { PeakTorqueRpm = 5000 }, Valve, null));

    [Fact]
    public void Speeds_are_given_over_the_range_and_at_the_peaks()
    {
        var port = TestPorts.Round([new OutlineErrorSource("print scale", [LinearEffect.Scale(0.001)])], (0, 15), (20, 14), (40, 16));

        var speeds = GasSpeedSchedule.Of(AreaSchedule.Of(port), Engine with { PeakTorqueRpm = 5000, PeakPowerRpm = 7000 });

        Assert.Equal(2, speeds.Fastest.Station);
        Assert.Equal((1500, 8000), (speeds.Rpms[0], speeds.Rpms[^1]));
        Assert.Contains(5000, speeds.Rpms);
        var speed = speeds.Fastest.SpeedsMPerS[^1];

        // 0.1 % of length is 0.2 % of area and of speed; the tilt of the cut adds 0.02 % in squares.
        Assert.InRange(speed.StandardUncertainty / speed.Value, 0.002, 0.00202);
    }

    private static IReadOnlyList<Judgement> Judge(double areaMm2, EngineData engine, ValveData? valve = null, double? coefficient = null) =>
        GasSpeedJudgements.Of(AreaSchedule.Of(TestPorts.OfAreas((0, areaMm2), (60, areaMm2))), PortKind.Intake, engine, valve, coefficient);
}
