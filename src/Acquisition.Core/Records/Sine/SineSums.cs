using System;
#if NET8_0_OR_GREATER
using System.Runtime.Intrinsics;
#endif

namespace Acquisition.Core.Records;

/// <summary>
/// One pass of a sine fit over the samples: the products of the columns cos, sin, 1 and t (-A sin + B cos) with each other and with the residual at the
/// present parameters (IEEE 1057/1241, handbook 9.1 and 9.2).
/// </summary>
/// <remarks>
/// Time is centred on the record and scaled to -1 ... 1, so that frequency and phase are nearly uncorrelated and no column dwarfs another. The sums are of
/// the residual, not of the samples: each iteration then corrects what the last one left, and the squared condition of normal equations costs iterations,
/// not digits.
/// </remarks>
internal struct SineSums
{
    // The oscillator is a rotation, restarted from Math.Sin and Math.Cos after so many samples, so that its rounding stays below 1e-13.
    private const int Restart = 512;

    internal double Count, C, S, CC, CS, T, TT, TC, TS, TCC, TCS, TTCC, TTCS;
    internal double R, RR, RC, RS, TRC, TRS;

    /// <summary>Adds the samples of a block, at the given parameters.</summary>
    /// <param name="x">The samples.</param>
    /// <param name="centre">Where centred time is zero, in samples.</param>
    /// <param name="half">Half the span of the record, in samples: centred time divided by it is -1 ... 1.</param>
    /// <param name="model">Present parameters.</param>
    internal void Add(in SampleBlock x, double centre, double half, in SineModel model)
    {
        for (int start = x.From; start < x.To; start += Restart)
        {
            int end = Math.Min(start + Restart, x.To);
#if NET8_0_OR_GREATER
            int whole = start + ((end - start) & ~3);
            AddFours(x, start, whole, centre, half, model);
            AddSingly(x, whole, end, centre, half, model);
#else
            AddSingly(x, start, end, centre, half, model);
#endif
        }
    }

    internal void AddSingly(in SampleBlock x, int from, int to, double centre, double half, in SineModel model)
    {
        if (from >= to)
            return;
        double w = 2 * Math.PI * model.Cycles;
        double c = Math.Cos(w * (from - centre)), s = Math.Sin(w * (from - centre));
        double stepC = Math.Cos(w), stepS = Math.Sin(w);
        for (int n = from; n < to; n++)
        {
            double t = (n - centre) / half;
            double r = x[n] - model.Offset - model.Cosine * c - model.Sine * s;
            double tc = t * c, ts = t * s;
            Count++;
            C += c;
            S += s;
            CC += c * c;
            CS += c * s;
            T += t;
            TT += t * t;
            TC += tc;
            TS += ts;
            TCC += tc * c;
            TCS += tc * s;
            TTCC += tc * tc;
            TTCS += tc * ts;
            R += r;
            RR += r * r;
            RC += r * c;
            RS += r * s;
            TRC += r * tc;
            TRS += r * ts;
            double next = c * stepC - s * stepS;
            s = s * stepC + c * stepS;
            c = next;
        }
    }

#if NET8_0_OR_GREATER
    private void AddFours(in SampleBlock x, int from, int to, double centre, double half, in SineModel model)
    {
        if (from >= to)
            return;
        double w = 2 * Math.PI * model.Cycles;
        double p = w * (from - centre);
        Vector256<double> c = Vector256.Create(Math.Cos(p), Math.Cos(p + w), Math.Cos(p + 2 * w), Math.Cos(p + 3 * w));
        Vector256<double> s = Vector256.Create(Math.Sin(p), Math.Sin(p + w), Math.Sin(p + 2 * w), Math.Sin(p + 3 * w));
        Vector256<double> stepC = Vector256.Create(Math.Cos(4 * w)), stepS = Vector256.Create(Math.Sin(4 * w));
        Vector256<double> t = (Vector256.Create(0.0, 1, 2, 3) + Vector256.Create(from - centre)) / Vector256.Create(half);
        Vector256<double> stepT = Vector256.Create(4 / half);
        Vector256<double> a = Vector256.Create(model.Cosine), b = Vector256.Create(model.Sine), o = Vector256.Create(model.Offset);
        Vector256<double> sumC = default, sumS = default, sumCC = default, sumCS = default, sumT = default, sumTT = default, sumTC = default, sumTS = default;
        Vector256<double> sumTCC = default, sumTCS = default, sumTTCC = default, sumTTCS = default;
        Vector256<double> sumR = default, sumRR = default, sumRC = default, sumRS = default, sumTRC = default, sumTRS = default;
        ref double first = ref x.Items[0];
        int item = x.ItemOf(from);
        for (int end = x.ItemOf(to); item < end; item += 4)
        {
            Vector256<double> r = Vector256.LoadUnsafe(ref first, (nuint)item) - o - a * c - b * s;
            Vector256<double> tc = t * c, ts = t * s;
            sumC += c;
            sumS += s;
            sumCC += c * c;
            sumCS += c * s;
            sumT += t;
            sumTT += t * t;
            sumTC += tc;
            sumTS += ts;
            sumTCC += tc * c;
            sumTCS += tc * s;
            sumTTCC += tc * tc;
            sumTTCS += tc * ts;
            sumR += r;
            sumRR += r * r;
            sumRC += r * c;
            sumRS += r * s;
            sumTRC += r * tc;
            sumTRS += r * ts;
            Vector256<double> next = c * stepC - s * stepS;
            s = s * stepC + c * stepS;
            c = next;
            t += stepT;
        }
        Count += to - from;
        C += Vector256.Sum(sumC);
        S += Vector256.Sum(sumS);
        CC += Vector256.Sum(sumCC);
        CS += Vector256.Sum(sumCS);
        T += Vector256.Sum(sumT);
        TT += Vector256.Sum(sumTT);
        TC += Vector256.Sum(sumTC);
        TS += Vector256.Sum(sumTS);
        TCC += Vector256.Sum(sumTCC);
        TCS += Vector256.Sum(sumTCS);
        TTCC += Vector256.Sum(sumTTCC);
        TTCS += Vector256.Sum(sumTTCS);
        R += Vector256.Sum(sumR);
        RR += Vector256.Sum(sumRR);
        RC += Vector256.Sum(sumRC);
        RS += Vector256.Sum(sumRS);
        TRC += Vector256.Sum(sumTRC);
        TRS += Vector256.Sum(sumTRS);
    }
#endif

    /// <summary>The normal matrix (row by row) and the right-hand side for corrections of cosine, sine, offset and, where <paramref name="free"/>, frequency.</summary>
    internal readonly void Normal(in SineModel model, bool free, double[] matrix, double[] gradient)
    {
        int size = free ? 4 : 3;
        double a = model.Cosine, b = model.Sine;
        Set(matrix, size, 0, 0, CC);
        Set(matrix, size, 0, 1, CS);
        Set(matrix, size, 0, 2, C);
        Set(matrix, size, 1, 1, Count - CC);
        Set(matrix, size, 1, 2, S);
        Set(matrix, size, 2, 2, Count);
        gradient[0] = RC;
        gradient[1] = RS;
        gradient[2] = R;
        if (!free)
            return;
        Set(matrix, size, 0, 3, b * TCC - a * TCS);
        Set(matrix, size, 1, 3, b * TCS - a * (T - TCC));
        Set(matrix, size, 2, 3, b * TC - a * TS);
        Set(matrix, size, 3, 3, a * a * (TT - TTCC) - 2 * a * b * TTCS + b * b * TTCC);
        gradient[3] = b * TRC - a * TRS;
    }

    private static void Set(double[] matrix, int size, int row, int column, double value) =>
        matrix[row * size + column] = matrix[column * size + row] = value;
}

/// <summary>A sine about the centre of the record: <c>Offset + Cosine cos(p) + Sine sin(p)</c>, p = 2 pi Cycles (n - centre).</summary>
internal readonly struct SineModel
{
    internal SineModel(double cosine, double sine, double offset, double cycles)
    {
        Cosine = cosine;
        Sine = sine;
        Offset = offset;
        Cycles = cycles;
    }

    internal double Cosine { get; }

    internal double Sine { get; }

    internal double Offset { get; }

    /// <summary>Frequency in cycles per sample.</summary>
    internal double Cycles { get; }

    internal double Amplitude => Math.Sqrt(Cosine * Cosine + Sine * Sine);
}
