namespace Acquisition.Core.Literals;

/// <summary>Current literals: <c>2.A()</c>.</summary>
public static class CurrentLiterals
{
    /// <summary>A current in amperes.</summary>
    public static Current A(this double value) => Current.FromAmperes(value);

    /// <summary>A current in amperes.</summary>
    public static Current A(this int value) => Current.FromAmperes(value);

    /// <summary>A current in milliamperes.</summary>
    public static Current mA(this double value) => Current.FromMilliamperes(value);

    /// <summary>A current in milliamperes.</summary>
    public static Current mA(this int value) => Current.FromMilliamperes(value);

    /// <summary>A current in microamperes.</summary>
    public static Current uA(this double value) => Current.FromMicroamperes(value);

    /// <summary>A current in microamperes.</summary>
    public static Current uA(this int value) => Current.FromMicroamperes(value);

    /// <summary>A current in nanoamperes.</summary>
    public static Current nA(this double value) => Current.FromNanoamperes(value);

    /// <summary>A current in nanoamperes.</summary>
    public static Current nA(this int value) => Current.FromNanoamperes(value);
}
