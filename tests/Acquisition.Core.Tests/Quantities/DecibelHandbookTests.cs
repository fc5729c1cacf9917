using System;
using System.Linq;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Quantities;

/// <summary>Levels and ratios against handbook section 1 (IEC 60027-3, ISO 80000-3: definitions; the values are computed there).</summary>
public class DecibelHandbookTests
{
    private static CheckValue Value(string id) => CheckValue.All[id];

    private static Resistance Load(CheckValue value) => Resistance.FromOhms(value.Number("R_ohm"));

    [Theory, HandbookData("DB-001")]
    public void AmplitudeRatio_IsTwentyTimesItsLogarithm(string id) => Value(id).Confirm(DecibelRatio.FromAmplitudeRatio(Ratio.FromFraction(Value(id).Number("field_ratio"))).Decibels);

    [Theory, HandbookData("DB-002")]
    public void PowerRatio_IsTenTimesItsLogarithm(string id) => Value(id).Confirm(DecibelRatio.FromPowerRatio(Ratio.FromFraction(Value(id).Number("power_ratio"))).Decibels);

    [Theory, HandbookData("DB-003")]
    public void Decibels_OfAnAmplitude_LeaveTheLogarithmByTwenty(string id) => Value(id).Confirm(DecibelRatio.FromDecibels(Value(id).Number("level_dB")).ToAmplitudeRatio().Fraction);

    [Theory, HandbookData("DB-004")]
    public void Decibels_OfAPower_LeaveTheLogarithmByTen(string id) => Value(id).Confirm(DecibelRatio.FromDecibels(Value(id).Number("level_dB")).ToPowerRatio().Fraction);

    [Theory, HandbookData("DB-005")]
    public void Neper_InDecibels(string id)
    {
        Value(id).Confirm(DecibelRatio.FromNepers(Value(id).Number("level_Np")).Decibels);
        Value(id).Confirm(DecibelRatio.Parse("1 Np").Decibels);
    }

    [Theory, HandbookData("DB-006")]
    public void Decibel_InNepers(string id) => Value(id).Confirm(DecibelRatio.FromDecibels(Value(id).Number("level_dB")).Nepers);

    [Theory, HandbookData("DB-007")]
    public void Neper_AsAPowerRatio(string id) => Value(id).Confirm(DecibelRatio.FromNepers(Value(id).Number("level_Np")).ToPowerRatio().Fraction);

    [Theory, HandbookData("DB-010")]
    public void HalfPower_IsALittleMoreThanThreeDecibels(string id) => Value(id).Confirm(DecibelRatio.HalfPower.Decibels);

    [Theory, HandbookData("DB-011")]
    public void HalfPower_IsAnAmplitudeOfOneOverRootTwo(string id) => Value(id).Confirm(DecibelRatio.HalfPower.ToAmplitudeRatio().Fraction);

    [Theory, HandbookData("DB-012")]
    public void LiteralThreeDecibels_AreNotHalfPower(string id) => Value(id).Confirm(DecibelRatio.Parse("-3 dB").ToAmplitudeRatio().Fraction);

    [Theory, HandbookData("DB-020", "DB-021", "DB-022")]
    public void PowerLevel_NeedsAResistanceToBecomeAVoltage(string id) =>
        Value(id).Confirm(PowerLevel.FromDecibelMilliwatts(Value(id).Number("level_dBm")).ToRmsVoltage(Load(Value(id))).Volts);

    [Theory, HandbookData("DB-030", "DB-031", "DB-032")]
    public void PowerLevel_AcrossAResistance_AsAVoltageLevel(string id) =>
        Value(id).Confirm(PowerLevel.FromDecibelMilliwatts(Value(id).Number("level_dBm")).ToRmsVoltage(Load(Value(id))).ToLevel().DecibelMicrovolts);

    [Theory, HandbookData("DB-040")]
    public void TenDecibelMilliwatts_InFiftyOhms_AreTwoVoltsPeakToPeakOfASine(string id) =>
        Value(id).Confirm(2 * Math.Sqrt(2) * PowerLevel.FromDecibelMilliwatts(Value(id).Number("level_dBm")).ToRmsVoltage(Load(Value(id))).Volts);

    [Theory, HandbookData("DB-041")]
    public void OneVoltPeakToPeak_OfASine_InFiftyOhms(string id) =>
        Value(id).Confirm(RmsVoltage.FromVolts(Value(id).Number("V_pp") / (2 * Math.Sqrt(2))).ToPowerLevel(Load(Value(id))).DecibelMilliwatts);

    [Theory, HandbookData("DB-042")]
    public void VoltageLevel_AsAPowerLevel(string id) => Value(id).Confirm(VoltageLevel.FromDecibelVolts(Value(id).Number("level_dBV")).ToPowerLevel(Load(Value(id))).DecibelMilliwatts);

    [Theory, HandbookData("DB-043")]
    public void MicrovoltLevel_AsAPowerLevel(string id) => Value(id).Confirm(VoltageLevel.FromDecibelMicrovolts(Value(id).Number("level_dBuV")).ToPowerLevel(Load(Value(id))).DecibelMilliwatts);

    [Theory, HandbookData("DB-044")]
    public void SameVoltage_AcrossAnotherResistance(string id) =>
        Value(id).Confirm(PowerLevel.FromDecibelMilliwatts(0).ToRmsVoltage(Resistance.FromOhms(Value(id).Number("R_from"))).ToPowerLevel(Resistance.FromOhms(Value(id).Number("R_to"))).DecibelMilliwatts);

    [Theory, HandbookData("DB-045")]
    public void OneVolt_InDecibelU_IsReadAndWrittenAsTheAudioTradeSays(string id)
    {
        string written = new Quantity(RmsVoltage.FromVolts(Value(id).Number("V_rms")).ToLevel().DecibelVolts, QuantityKind.VoltageLevel).ToString("E16 dBu");
        Value(id).Confirm(double.Parse(written.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(Math.Sqrt(0.6), VoltageLevel.Parse("0 dBu").ToRmsVoltage().Volts, 1e-15);
    }

    [Theory, HandbookData("DB-050")]
    public void Gains_OneAfterTheOther_Add(string id) =>
        Value(id).Confirm(Value(id).Numbers("gains_dB").Select(DecibelRatio.FromDecibels).Aggregate((sum, gain) => sum + gain).Decibels);

    [Theory, HandbookData("DB-051")]
    public void UncorrelatedLevels_AddAsPowers(string id)
    {
        double[] levels = Value(id).Numbers("levels_dBm");
        Value(id).Confirm(PowerLevel.FromDecibelMilliwatts(levels[0]).CombinedWith(PowerLevel.FromDecibelMilliwatts(levels[1])).DecibelMilliwatts);
    }

    [Theory, HandbookData("DB-052")]
    public void SinesInPhase_AddAsVoltages(string id)
    {
        Resistance load = Resistance.FromOhms(50);
        RmsVoltage sum = Value(id).Numbers("levels_dBm").Select(level => PowerLevel.FromDecibelMilliwatts(level).ToRmsVoltage(load)).Aggregate((a, b) => a + b);
        Value(id).Confirm(sum.ToPowerLevel(load).DecibelMilliwatts);
    }

    [Theory, HandbookData("DB-053")]
    public void Noise_IsTakenOutOfAReadingAsPower(string id) =>
        Value(id).Confirm((PowerLevel.FromDecibelMilliwatts(Value(id).Number("level_with_noise_dBm")).ToPower() - PowerLevel.FromDecibelMilliwatts(Value(id).Number("noise_dBm")).ToPower()).ToLevel().DecibelMilliwatts);

    [Theory, HandbookData("DB-054")]
    public void Spur_RelativeToTheCarrier_IsTheDifferenceOfTwoLevels(string id) =>
        Value(id).Confirm((PowerLevel.FromDecibelMilliwatts(Value(id).Number("spur_dBm")) - PowerLevel.FromDecibelMilliwatts(Value(id).Number("carrier_dBm"))).Decibels);
}
