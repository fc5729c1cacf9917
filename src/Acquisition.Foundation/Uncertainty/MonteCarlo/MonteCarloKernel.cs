namespace Acquisition.Core;

/// <summary>Evaluates a measurement model over columns of draws.</summary>
/// <param name="inputsInSi">One column per input, in SI units (decibels for decibel kinds). They may be overwritten; they are longer than <paramref name="count"/>.</param>
/// <param name="resultInSi">Where the results go, in the SI unit of the result.</param>
/// <param name="count">How many draws the columns hold.</param>
/// <remarks>Called from several threads at once, each with columns of its own; a result must depend on nothing but its inputs.</remarks>
public delegate void MonteCarloKernel(double[][] inputsInSi, double[] resultInSi, int count);
