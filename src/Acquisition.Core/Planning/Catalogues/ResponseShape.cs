using System;
using System.Globalization;

namespace Acquisition.Core.Planning;

/// <summary>How a stage falls off, without saying where: single pole, Gaussian, Butterworth or Bessel of an order. With a bandwidth it becomes a <see cref="Response"/>.</summary>
/// <remarks>Immutable; two of the same kind and order are equal. A data sheet's "maximally flat" is best taken as Butterworth 4 to 8, an analogue front end as Gaussian or single pole (handbook 2.4).</remarks>
public sealed class ResponseShape : IEquatable<ResponseShape>
{
    private readonly string _kind;
    private readonly int _order;
    private readonly Lazy<RampResponse> _ramps;

    private ResponseShape(string kind, int order)
    {
        _kind = kind;
        _order = order;
        Unit = At(Frequency.FromHertz(1));
        RiseTimeProduct = Unit.RiseTime.SiValue;
        _ramps = new Lazy<RampResponse>(() => new RampResponse(Unit, RiseTimeProduct));
    }

    /// <summary>One RC pole.</summary>
    public static ResponseShape SinglePole { get; } = new("single pole", 1);

    /// <summary>The limit of many stages alike.</summary>
    public static ResponseShape Gaussian { get; } = new("Gaussian", 0);

    /// <summary>Flattest in magnitude, of order 1 to 10.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="order"/> is not 1 to 10.</exception>
    public static ResponseShape Butterworth(int order) => new("Butterworth", order);

    /// <summary>Flattest in delay, of order 1 to 10.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="order"/> is not 1 to 10.</exception>
    public static ResponseShape Bessel(int order) => new("Bessel", order);

    /// <summary>Rise time (10 % to 90 %) times bandwidth: about 0.34 to 0.49, by the shape alone (handbook 2.2).</summary>
    internal double RiseTimeProduct { get; }


    /// <summary>The response of this shape with a bandwidth of 1 Hz: all others are it, scaled.</summary>
    internal Response Unit { get; }

    /// <summary>What the response of 1 Hz makes of ramps.</summary>
    internal RampResponse Ramps => _ramps.Value;

    /// <summary>The response of this shape with a bandwidth.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bandwidth"/> is not above 0 Hz.</exception>
    public Response At(Frequency bandwidth) => _kind switch
    {
        "Gaussian" => Response.Gaussian(bandwidth),
        "Butterworth" => Response.Butterworth(_order, bandwidth),
        "Bessel" => Response.Bessel(_order, bandwidth),
        _ => Response.SinglePole(bandwidth),
    };

    /// <summary>Reads <c>single pole</c>, <c>Gaussian</c>, <c>Butterworth 4</c>, <c>Bessel 3</c>; capitals do not matter.</summary>
    /// <exception cref="FormatException">The text is none of them.</exception>
    public static ResponseShape Parse(string text) => TryParse(text, out ResponseShape? shape)
        ? shape!
        : throw new FormatException($"found \"{text}\", expected single pole, Gaussian, Butterworth 1 to 10, or Bessel 1 to 10");

    /// <summary>Reads a shape without throwing; false where the text is none.</summary>
    public static bool TryParse(string? text, out ResponseShape? shape)
    {
        string[] words = (text ?? "").Split([' '], StringSplitOptions.RemoveEmptyEntries);
        string first = words.Length > 0 ? words[0].ToUpperInvariant() : "";
        shape = null;
        if (words.Length == 1 && first == "GAUSSIAN")
            shape = Gaussian;
        else if (words.Length == 2 && first == "SINGLE" && string.Equals(words[1], "pole", StringComparison.OrdinalIgnoreCase))
            shape = SinglePole;
        else if (words.Length == 2 && int.TryParse(words[1], NumberStyles.None, CultureInfo.InvariantCulture, out int order) && order is >= 1 and <= 10)
            shape = first == "BUTTERWORTH" ? Butterworth(order) : first == "BESSEL" ? Bessel(order) : null;
        return shape is not null;
    }

    /// <inheritdoc/>
    public bool Equals(ResponseShape? other) => other is not null && _kind == other._kind && _order == other._order;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ResponseShape);

    /// <inheritdoc/>
    public override int GetHashCode() => (_kind.Length * 31) + _order;

    /// <summary>The text that <see cref="Parse"/> reads.</summary>
    public override string ToString() => _kind is "Gaussian" or "single pole" ? _kind : FormattableString.Invariant($"{_kind} {_order}");
}
