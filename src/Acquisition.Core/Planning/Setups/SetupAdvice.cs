using System;
using System.Collections.Generic;
using Acquisition.Core.Planning;

namespace Acquisition.Core;

/// <summary>How to set a chosen instrument and probe for a requirement: window, rate, range, bandwidth limit, acquisition mode and interpolation, each with its reason and what is lost by it.</summary>
/// <remarks>Immutable. Made by <see cref="For"/>.</remarks>
public sealed class SetupAdvice
{
    internal SetupAdvice(IReadOnlyList<Advice> settings, SampledSignal setup, Duration window)
    {
        Settings = settings.Frozen();
        Setup = setup;
        Window = window;
        Outlook = setup.Over(window);
    }

    /// <summary>The settings, in the order in which they are made.</summary>
    public IReadOnlyList<Advice> Settings { get; }

    /// <summary>The first signal of the requirement behind the chain, with the instrument set as advised.</summary>
    public SampledSignal Setup { get; }

    /// <summary>The window advised.</summary>
    public Duration Window { get; }

    /// <summary>What will be seen with these settings.</summary>
    public Outlook Outlook { get; }

    /// <summary>Advises settings.</summary>
    /// <param name="requirement">What must be seen; the first signal is the one that is set up for.</param>
    /// <param name="instrument">The instrument.</param>
    /// <param name="probe">The probe.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The instrument has no input for the probe, or not enough channels.</exception>
    public static SetupAdvice For(Requirement requirement, CatalogueInstrument instrument, CatalogueProbe probe) => new SetupAdviser(
        requirement ?? throw new ArgumentNullException(nameof(requirement)),
        instrument ?? throw new ArgumentNullException(nameof(instrument)),
        probe ?? throw new ArgumentNullException(nameof(probe))).Advise();

    /// <summary>The settings as plain text.</summary>
    public override string ToString()
    {
        var text = new PlainText();
        foreach (Advice advice in Settings)
        {
            text.Row(advice.Setting, advice.Value);
            text.Note("because " + advice.Reason);
            if (advice.Loses is not null)
                text.Note("lost: " + advice.Loses);
        }
        return text.ToString();
    }
}
