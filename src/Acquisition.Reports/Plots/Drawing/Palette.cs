namespace Acquisition.Reports;

/// <summary>The colours, for paper and for a dark screen, with the dash patterns and marks that tell traces apart without them.</summary>
/// <remarks>
/// Hues: M. Okabe and K. Ito, "Color Universal Design" (2008), from memory: black, blue, vermillion and bluish green on white; white, sky blue, orange and bluish green on dark.
/// Each keeps a contrast of at least 3 : 1 to its background, as WCAG 2.1, 1.4.11 asks of graphics; a test computes it. Texts keep 4.5 : 1 (1.4.3).
/// </remarks>
internal static class Palette
{
    internal const string Paper = "#ffffff", DarkPaper = "#16191d";
    internal const string Text = "#1a1a1a", DarkText = "#eceff1";
    internal const string Soft = "#dcdfe2", DarkSoft = "#3a4047";
    internal const string Guide = "#5c6166", DarkGuide = "#a9b0b7";

    internal static readonly string[] Light = { "#000000", "#0072b2", "#d55e00", "#009e73" };
    internal static readonly string[] Dark = { "#ffffff", "#56b4e9", "#e69f00", "#009e73" };
    internal static readonly string[] Dashes = { "", "9 4", "3 3", "11 3 2 3", "16 5", "2 5", "7 2 7 2 2 2" };

    internal const string Root = "acquisition-drawing";

    /// <summary>The colour of a trace: the first one is ink.</summary>
    internal static int ColourOf(int index) => index % Light.Length;

    /// <summary>What changes on a dark screen. Every rule is below one class, so that several pictures and a host's own style live in one page; print and other programs see the attributes alone.</summary>
    internal static string Style()
    {
        var rules = new System.Text.StringBuilder("@media screen and (prefers-color-scheme:dark){");
        Rule("paper", "fill:" + DarkPaper);
        Rule("text", "fill:" + DarkText);
        Rule("soft", "stroke:" + DarkSoft);
        Rule("guide", "stroke:" + DarkGuide);
        Rule("under", "stroke:" + DarkPaper);
        for (int i = 0; i < Dark.Length; i++)
        {
            Rule("s" + (char)('0' + i), "stroke:" + Dark[i]);
            Rule("f" + (char)('0' + i), "fill:" + Dark[i]);
        }
        return rules.Append('}').ToString();

        void Rule(string name, string declaration) => rules.Append('.').Append(Root).Append(" .").Append(name).Append('{').Append(declaration).Append('}');
    }
}
