using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Planning;

namespace Acquisition.Core;

/// <summary>
/// How to set a chosen instrument and probe for a requirement: window, rate, range, bandwidth limit, acquisition mode and interpolation, each with its reason, the signal that decided it and what is lost by it.
/// One set-up serves all signals of the requirement: the fastest edge, the highest needed rate, the largest swing and the smallest detail decide.
/// </summary>
/// <remarks>Immutable. Made by <see cref="For"/>.</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public sealed class SetupAdvice
{
    internal SetupAdvice(IReadOnlyList<Advice> settings, IReadOnlyList<Finding> findings, IReadOnlyList<SampledSignal> setups, Duration window)
    {
        Settings = settings.Frozen();
        Findings = findings.Frozen();
        Setups = setups.Frozen();
        Window = window;
        Outlooks = setups.Select(setup => setup.Over(window)).Frozen();
    }

    /// <summary>The settings, in the order in which they are made.</summary>
    public IReadOnlyList<Advice> Settings { get; }

    /// <summary>Demands that one set-up cannot meet together, each with the remedies: <c>window-against-rate</c>, <c>range-against-detail</c>; and what is to be known for safety. Empty where all go together and nothing is.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Each signal of the requirement behind the chain, with the instrument set as advised; in the order of the requirement.</summary>
    public IReadOnlyList<SampledSignal> Setups { get; }

    /// <summary>The window advised.</summary>
    public Duration Window { get; }

    /// <summary>What will be seen of each signal with these settings; in the order of the requirement.</summary>
    public IReadOnlyList<Outlook> Outlooks { get; }

    /// <summary>Advises settings.</summary>
    /// <param name="requirement">What must be seen.</param>
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
            if (advice.DecidedBy is { } signal && Setups.Count > 1)
                text.Note("decided by " + signal);
            if (advice.Loses is not null)
                text.Note("lost: " + advice.Loses);
        }
        text.Findings(Findings);
        return text.ToString();
    }
}
