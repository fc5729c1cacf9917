using System;
using System.Linq;

namespace Acquisition.Core.Planning;

// Cautions, not advice (handbook 12.6, 7.10). Local codes, the equipment's manuals and licensed practice decide.
internal sealed partial class OutlookFindings
{
    private const string Defer = "follow the equipment's manuals, local codes and licensed practice";

    // IEC 61010-1 takes 33 V rms (46.7 V peak) or 70 V DC as the limit of what may be touched in dry places (from memory, not checked against its text).
    private const double TouchableVolts = 46.7;

    private void Safety()
    {
        double peak = Signal.Peak.SiValue;
        if (peak > TouchableVolts)
        {
            Add("hazardous-voltage", Severity.Safety,
                $"the signal reaches {Signal.Peak.InWords()}, which can hurt; the lowest rating and category of instrument, probe and accessory holds, and a reference lead of an earthed input on a live node makes a fault current",
                "probe and input rated for the place, differential or isolated where no point is earth; " + Defer, "handbook 12.6; IEC 61010-1, IEC 61010-2-030 (from memory)");
        }
        if (outlook.Setup.Applied.Chain is not { } chain)
            return;
        Frequency frequency = outlook.Tone ?? default;
        foreach (Probe probe in chain.Elements.OfType<Probe>())
        {
            if (probe.Rating is { } rating)
                Rated(probe.Name, peak, rating.At(frequency), frequency);
        }
        FrontEnd input = chain.FrontEnd;
        double atInput = peak / outlook.Setup.Applied.Attenuation;
        if (input.Rating is { } inputRating)
            Rated(input.Name, atInput, inputRating.At(frequency), frequency);
        else if (input.IsTerminated && Power(atInput, input) > 0.5)
            Add("terminator-power", Severity.Safety, $"up to {FewDigits.Of(Power(atInput, input), Core.Power.Kind)} go into the {input.InputResistance.InWords()} of {input.Name}; such inputs are usually made for 0.5 W (5 V rms)",
                "look up its limit, or attenuate before it", "handbook 7.5, common practice");
    }

    // A sine's peak gives half of this; a level that stays gives all of it.
    private double Power(double peakVolts, FrontEnd input) => Signal.Rms.SiValue / Signal.Peak.SiValue * (Signal.Rms.SiValue / Signal.Peak.SiValue) * peakVolts * peakVolts / input.InputResistance.SiValue;

    private void Rated(string name, double volts, Voltage? rating, Frequency frequency)
    {
        if (rating is { } limit && volts <= limit.SiValue)
            return;
        string allowed = rating is { } known ? $"stands {known.InWords()}" : "has no rating";
        Add("over-voltage", Severity.Safety, $"{name} {allowed} at {frequency.InWords()}; {FewDigits.Of(volts, Voltage.Kind)} would be applied", "a probe that is rated for it; " + Defer, "handbook 7.10, 12.6");
    }
}
