using Acquisition.Core;
using Acquisition.Core.Formulas;
using Xunit;

namespace Acquisition.Interop.Tests;

/// <summary>The code that the package's page shows is cut from here.</summary>
public sealed class PageExamplesTests
{
    [Fact]
    public void Quantity_GoesOutAndComesBack()
    {
        #region conversions
        UnitsNet.Frequency theirs = Frequency.FromMegahertz(200).ToUnitsNet();
        Frequency ours = theirs.ToAcquisition();
        #endregion

        Assert.Equal(200, theirs.Megahertz);
        Assert.Equal(Frequency.FromMegahertz(200), ours);
    }

    /// <summary>14.7 psi and 2 lbf by definition of the pound-force per square inch and the pound-force (NIST SP 811, from memory).</summary>
    [Fact]
    public void WiderUnits_AreReadInTextAndFormulas()
    {
        #region units
        Quantity pressure = WiderUnits.Parse("14.7 psi");
        FormulaContext context = FormulaContext.Standard.WithWiderUnits("ft", "psi").WithWiderUnits(UnitsNet.Force.Info);
        double newtons = context.Build("2 lbf * 3 ft / (1 m)").Evaluate().Quantity.SiValue;
        #endregion

        Assert.Equal(14.7 * 6894.757293168361, pressure.SiValue, 1e-6);
        Assert.Equal(2 * 4.4482216152605 * 3 * 0.3048, newtons, 1e-9);
    }
}
