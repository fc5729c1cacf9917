namespace Acquisition.Core.Formulas.Syntax;

/// <summary>The operators that stand between two operands or before one.</summary>
internal enum Operator : byte
{
    None,
    Or,
    And,
    Not,
    Less,
    LessOrEqual,
    Greater,
    GreaterOrEqual,
    Equal,
    NotEqual,
    Add,
    Subtract,
    Multiply,
    Divide,
    Negate,
    Power,
}

/// <summary>How tightly parts of a formula hold together, loosest first.</summary>
internal static class Tightness
{
    internal const int Conversion = 1;
    internal const int Or = 2;
    internal const int And = 3;
    internal const int Not = 4;
    internal const int Comparison = 5;
    internal const int Sum = 6;
    internal const int Uncertainty = 7;
    internal const int Product = 8;
    internal const int Sign = 9;
    internal const int Power = 10;
    internal const int Operand = 11;

    internal static int Of(Operator op) => op switch
    {
        Operator.Or => Or,
        Operator.And => And,
        Operator.Not => Not,
        >= Operator.Less and <= Operator.NotEqual => Comparison,
        Operator.Add or Operator.Subtract => Sum,
        Operator.Multiply or Operator.Divide => Product,
        Operator.Negate => Sign,
        Operator.Power => Power,
        _ => Operand,
    };

    internal static string Spelling(Operator op) => op switch
    {
        Operator.Or => "or",
        Operator.And => "and",
        Operator.Not => "not",
        Operator.Less => "<",
        Operator.LessOrEqual => "<=",
        Operator.Greater => ">",
        Operator.GreaterOrEqual => ">=",
        Operator.Equal => "==",
        Operator.NotEqual => "!=",
        Operator.Add => "+",
        Operator.Subtract or Operator.Negate => "-",
        Operator.Multiply => "*",
        Operator.Divide => "/",
        _ => "^",
    };
}
