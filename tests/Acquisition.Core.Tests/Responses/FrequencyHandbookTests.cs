using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>Cascaded bandwidth, amplitude error and noise bandwidth: handbook 3, 4.6 and 6.6.</summary>
public class FrequencyHandbookTests
{
    private static readonly Frequency Hz = 1.Hz();

    [Theory, HandbookData("CAS-N", "CAS-2P", "CAS-B2", "CAS-B3", "CAS-B4", "CAS-B6", "CAS-G", "CAS-M")]
    public void Bandwidth_OfACascade_IsTheHandbooks(string id) => CheckValue.All[id].Confirm(Cascade(CheckValue.All[id]).Bandwidth.Hertz);

    [Theory, HandbookData("NB-")]
    public void NoiseBandwidth_OfEachModel_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        Response response = value.Text("response") switch
        {
            "single pole" => Response.SinglePole(Hz),
            "n identical real poles" => Response.PolesEqual(value.Integer("n"), Hz),
            "Butterworth" => Response.Butterworth(value.Integer("n"), Hz),
            "Bessel-Thomson" => Response.Bessel(value.Integer("n"), Hz),
            "gaussian" => Response.Gaussian(Hz),
            _ => Response.SecondOrder(Hz, Ratio.FromFraction(value.Number("zeta"))),
        };
        value.Confirm((response.NoiseBandwidth / response.Bandwidth).Fraction);
    }

    [Theory, HandbookData("AE-")]
    public void FrequencyForAnAmplitudeError_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        value.Confirm(Model(value.Text("response")).FrequencyForAmplitudeError(Ratio.FromFraction(value.Number("amplitude_error"))).Hertz);
    }

    [Theory, HandbookData("AF-")]
    public void AmplitudeError_AtAFrequency_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        value.Confirm(-Model(value.Text("response")).AmplitudeError(value.Number("f_over_f3").Hz()).Fraction);
    }

    private static Response Model(string name) => name switch
    {
        "single pole" => Response.SinglePole(Hz),
        "gaussian" => Response.Gaussian(Hz),
        _ => Response.Butterworth(int.Parse(name["Butterworth-".Length..], System.Globalization.CultureInfo.InvariantCulture), Hz),
    };

    private static Response Cascade(CheckValue value) => value.Text("stages") switch
    {
        "n identical single pole" => Response.Cascade(Enumerable.Repeat(Response.SinglePole(Hz), value.Integer("n")).ToArray()),
        "2 single pole" => Response.SinglePole(value.Numbers("f3")[0].Hz()).Then(Response.SinglePole(value.Numbers("f3")[1].Hz())),
        "2 identical Butterworth" => Response.Butterworth(value.Integer("order"), Hz).Then(Response.Butterworth(value.Integer("order"), Hz)),
        "gaussian" => Response.Gaussian(value.Numbers("f3")[0].Hz()).Then(Response.Gaussian(value.Numbers("f3")[1].Hz())),
        "gaussian 500 MHz + Butterworth-4 1 GHz" => Response.Gaussian(500.MHz()).Then(Response.Butterworth(4, 1.GHz())),
        "single pole 500 MHz + Butterworth-4 1 GHz" => Response.SinglePole(500.MHz()).Then(Response.Butterworth(4, 1.GHz())),
        _ => throw new NotSupportedException(value.Text("stages")),
    };
}
