namespace Acquisition.Core.Formulas.Execution;

/// <summary>What one instruction does. Truth values are 1 and 0; a value that does not exist is NaN and stays so through every operation.</summary>
internal enum Operation : byte
{
    /// <summary>target = a.</summary>
    Copy,

    /// <summary>target = -a.</summary>
    Negate,

    /// <summary>target = a + b.</summary>
    Add,

    /// <summary>target = a - b.</summary>
    Subtract,

    /// <summary>target = a * b.</summary>
    Multiply,

    /// <summary>target = a / b; does not exist where b is 0.</summary>
    Divide,

    /// <summary>target = a^b.</summary>
    Power,

    /// <summary>target = a * a.</summary>
    Square,

    /// <summary>target = square root of a.</summary>
    SquareRoot,

    /// <summary>target = |a|.</summary>
    Absolute,

    /// <summary>target = the smaller of a and b.</summary>
    Minimum,

    /// <summary>target = the greater of a and b.</summary>
    Maximum,

    /// <summary>target = a + 10 lg b: a level density over a bandwidth.</summary>
    LevelInBandwidth,

    /// <summary>target = a - 10 lg b: a level per bandwidth.</summary>
    LevelPerBandwidth,

    /// <summary>target = a &lt; b.</summary>
    Less,

    /// <summary>target = a &lt;= b.</summary>
    LessOrEqual,

    /// <summary>target = a == b.</summary>
    Equal,

    /// <summary>target = a != b.</summary>
    NotEqual,

    /// <summary>target = a and b.</summary>
    And,

    /// <summary>target = a or b.</summary>
    Or,

    /// <summary>target = not a.</summary>
    Not,

    /// <summary>target = a is true ? b : c; does not exist where a does not.</summary>
    Select,

    /// <summary>target = a + the deviation of uncertain term b.</summary>
    Deviate,

    /// <summary>Goes on at instruction b.</summary>
    Jump,

    /// <summary>Goes on at instruction b unless a is true; where the condition does not exist, the target does not either, and it goes on at c.</summary>
    JumpUnless,

    /// <summary>The same for a choice between objects.</summary>
    JumpUnlessForObject,

    /// <summary>target = function of one number.</summary>
    Call1,

    /// <summary>target = function of two numbers.</summary>
    Call2,

    /// <summary>target = function of any arguments.</summary>
    Call,

    /// <summary>object target = function of any arguments.</summary>
    CallForObject,

    /// <summary>object target = object a.</summary>
    CopyObject,

    /// <summary>object target = a is true ? object b : object c.</summary>
    SelectObject,

    /// <summary>target = text a is text b.</summary>
    TextsEqual,
}
