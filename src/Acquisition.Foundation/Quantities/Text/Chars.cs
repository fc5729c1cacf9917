// The readers are written once over "something with a length and characters": a span where there is one, a string on netstandard2.0.
#if NET8_0_OR_GREATER
global using CharBuffer = System.Span<char>;
global using Chars = System.ReadOnlySpan<char>;
#else
global using CharBuffer = char[];
global using Chars = string;
#endif
