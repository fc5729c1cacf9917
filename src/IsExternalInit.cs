namespace System.Runtime.CompilerServices;

/// <summary>What the compiler asks for where records are compiled for netstandard2.0. One file of our own: a generator of such types wrote them in another order at every build.</summary>
internal static class IsExternalInit;
