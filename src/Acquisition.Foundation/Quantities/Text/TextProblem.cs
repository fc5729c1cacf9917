namespace Acquisition.Core;

/// <summary>Why text is refused and where; becomes a sentence only when somebody asks (see <see cref="ProblemText"/>).</summary>
internal readonly struct TextProblem
{
    internal TextProblem(TextFault fault, int start, int length)
    {
        Fault = fault;
        Start = start;
        Length = length;
    }

    internal readonly TextFault Fault;

    /// <summary>The place of the first character at fault, counted from 0.</summary>
    internal readonly int Start;

    /// <summary>How many characters are at fault; 0 where something is missing.</summary>
    internal readonly int Length;
}

/// <summary>What can be wrong with the text of a quantity.</summary>
internal enum TextFault : byte
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>There is no text.</summary>
    Empty,

    /// <summary>The text is longer than <see cref="QuantityReader.MaximumLength"/>.</summary>
    TooLong,

    /// <summary>No number where one must stand.</summary>
    NumberExpected,

    /// <summary>No digit after the decimal point.</summary>
    FractionExpected,

    /// <summary>Digits after a space or <c>_</c> that are no group of three.</summary>
    GroupNotOfThree,

    /// <summary>A comma in a number.</summary>
    Comma,

    /// <summary>A point in a number of a culture with another decimal separator.</summary>
    Point,

    /// <summary>A digit of another script.</summary>
    ForeignDigit,

    /// <summary>The number is above what a double holds.</summary>
    TooLarge,

    /// <summary>The number is not zero and below what a double holds.</summary>
    TooSmall,

    /// <summary>No unit where one must stand.</summary>
    UnitExpected,

    /// <summary>A word that is no unit.</summary>
    UnknownUnit,

    /// <summary>A prefix and a unit that do not go together.</summary>
    PrefixRefused,

    /// <summary>No exponent after <c>^</c>.</summary>
    PowerExpected,

    /// <summary>An exponent that is no multiple of one half up to 63.</summary>
    PowerRefused,

    /// <summary>A unit to a power, or a product, whose scale cannot be held exactly.</summary>
    ScaleRefused,

    /// <summary>A second slash, or a product after the slash without parentheses.</summary>
    SecondSlash,

    /// <summary>No closing parenthesis.</summary>
    ClosingParenthesisExpected,

    /// <summary>More factors than any unit of the trade has.</summary>
    TooManyFactors,

    /// <summary>A logarithmic unit combined with another unit.</summary>
    LogarithmInProduct,

    /// <summary>A tagged amplitude such as Vpp combined with another unit.</summary>
    AmplitudeInProduct,

    /// <summary>A temperature in °C combined with another unit.</summary>
    CelsiusInProduct,

    /// <summary>Text after the quantity.</summary>
    TrailingText,

    /// <summary>A quantity of another kind than the wanted one.</summary>
    WrongKind,

    /// <summary>A plain number where a unit is needed.</summary>
    UnitMissing,
}
