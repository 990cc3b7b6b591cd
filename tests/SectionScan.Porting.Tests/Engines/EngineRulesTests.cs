using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Engines;

namespace SectionScan.Porting.Tests.Engines;

public sealed class EngineRulesTests
{
    private static readonly EngineData Twin = new(68, 66, 2, 1500, 8000) { RodMm = 120, PeakTorqueRpm = 5000, PeakPowerRpm = 7000 };
    private static readonly ValveData Valve = new(33, 5.5) { LiftMm = 9, SeatWidthMm = 1.5 };

    [Fact]
    public void The_invented_twin_is_an_engine()
    {
        Assert.True(EngineRules.Check(Twin, "job").IsSuccess);
        Assert.True(EngineRules.Check(Valve, 68, "job").IsSuccess);

        // Field guide section 6: piston area 3631.681108 mm², swept volume 239690.9531 mm³.
        Assert.Equal(3631.681108, Twin.PistonAreaMm2, 6);
        Assert.Equal(239690.9531, Twin.SweptVolumeMm3, 4);
    }

    [Fact]
    public void Impossible_engines_are_refused_one_by_one()
    {
        Refused(Twin with { BoreMm = 6.8 }, "engine-data-out-of-range", "The bore is given as 6.8 mm");
        Refused(Twin with { StrokeMm = double.NaN }, "engine-data-out-of-range", "stroke");
        Refused(Twin with { Cylinders = 0 }, "engine-data-out-of-range", "number of cylinders");
        Refused(Twin with { RpmFrom = 8000, RpmTo = 1500 }, "engine-speeds-turned", "from 8000 to 1500");
        Refused(Twin with { RodMm = 30 }, "engine-rod-too-short", "crank of 33 mm");
        Refused(Twin with { PeakTorqueRpm = 7500 }, "engine-torque-above-power", "7500");
    }

    [Fact]
    public void Impossible_valves_are_refused_one_by_one()
    {
        Refused(Valve with { DiameterMm = 70 }, "engine-part-too-large", "The valve of 70 mm is not smaller than the bore of 68 mm");
        Refused(Valve with { StemMm = 17 }, "engine-part-too-large", "valve stem of 17 mm");
        Refused(Valve with { ThroatMm = 34 }, "engine-part-too-large", "throat of 34 mm");
        Refused(Valve with { GuideMm = 5 }, "engine-part-too-large", "the guide of 5 mm");
        Refused(Valve with { SeatAngle = Angle.FromDegrees(5) }, "engine-data-out-of-range", "seat angle is given as 5°");
    }

    private static void Refused(EngineData engine, string code, string words)
    {
        EngineRules.Check(engine, "job").TryGet(out _, out var problem);
        Assert.Equal(code, problem?.Code);
        Assert.Contains(words, problem!.What, StringComparison.Ordinal);
    }

    private static void Refused(ValveData valve, string code, string words)
    {
        EngineRules.Check(valve, 68, "job").TryGet(out _, out var problem);
        Assert.Equal(code, problem?.Code);
        Assert.Contains(words, problem!.What, StringComparison.Ordinal);
    }
}
