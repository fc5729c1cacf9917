using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Text.Json;
using Acquisition.Core.Explanations.Json;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Explanations;

public class JsonTests
{
    [Fact]
    public void Reading_GivesEveryValueItsPlace()
    {
        JsonValue root = Read("{\n  \"window\": \"10 ms\",\n  \"counts\": [1, -2.5e3,\n    true]\n}");
        JsonValue counts = root.Member("counts")!;
        Assert.Equal((2, 13), (root.Member("window")!.Line, root.Member("window")!.Column));
        Assert.Equal((4, 5), (counts.Items[2].Line, counts.Items[2].Column));
        Assert.Equal(-2500, counts.Items[1].Number);
        Assert.True(counts.Items[2].Truth);
    }

    [Theory]
    [InlineData(3.5e-10, "3.5E-10")]
    [InlineData(1.0 / 3, "0.3333333333333333")]
    [InlineData(1e21, "1E+21")]
    [InlineData(5e-324, "5E-324")]
    [InlineData(double.NaN, "null")]
    public void Writing_GivesNumbersThatReadBackToTheSameBits(double number, string text) => Assert.Equal(text + "\n", new JsonWriter().Number(null, number).ToString());

    [Fact]
    public void Writing_ShowsWhatAReaderWouldNotSee() => Assert.Equal("\"a\\u202eb\\u001b\\u0085\\ufeff\\ud800\"\n", new JsonWriter().Text(null, "a\u202Eb\u001B\u0085\uFEFF\uD800").ToString());

    [Fact]
    public void Reading_DecodesEscapes()
    {
        Assert.Equal("a\"\\/\b\f\n\r\tµ😀", Read("\"a\\\"\\\\\\/\\b\\f\\n\\r\\t\\u00b5\\uD83D\\ude00\"").Text);
    }

    [Theory]
    [InlineData("", "line 1, column 1: the document ends where a value was expected")]
    [InlineData("{\"a\": 100 MHz}", "line 1, column 11: found 'M', expected ',' or '}'")]
    [InlineData("{\"a\": 1,}", "line 1, column 8: found ',' before '}'; remove it")]
    [InlineData("{\"a\": 1\n \"b\": 2}", "line 2, column 2: found '\"', expected ',' or '}'")]
    [InlineData("{\"a\": 1, \"a\": 2}", "line 1, column 10: a: this member occurs twice in one object")]
    [InlineData("{'a': 1}", "line 1, column 2: found ''', expected the name of a member in double quotes")]
    [InlineData("{\"a\" 1}", "line 1, column 6: found '1', expected ':' after \"a\"")]
    [InlineData("[01]", "line 1, column 2: '01' is not a JSON number; a quantity with its unit is written in double quotes, such as \"100 MHz\"")]
    [InlineData("[1e400]", "line 1, column 2: '1e400' is not a JSON number; a quantity with its unit is written in double quotes, such as \"100 MHz\"")]
    [InlineData("[NaN]", "line 1, column 2: found 'NaN', expected a value; a text is written in double quotes")]
    [InlineData("[\"abc]", "line 1, column 2: this text is not closed; expected '\"' before the end of the line")]
    [InlineData("[\"\\x\"]", "line 1, column 3: found an escape that JSON does not know; a backslash is written \\\\")]
    [InlineData("[1] 2", "line 1, column 5: found '2' after the end of the document")]
    [InlineData("{\"a\": [1, 2", "line 1, column 12: the list opened at line 1, column 7 is not closed; expected ']'")]
    public void Mistake_IsNamedWithItsPlace(string text, string expected)
    {
        var problems = new List<DocumentProblem>();
        JsonReader.Read(text, problems);
        Assert.Equal(expected, problems[0].ToString());
    }

    [Fact]
    public void Reading_GoesOnAfterAMistake()
    {
        var problems = new List<DocumentProblem>();
        JsonValue root = JsonReader.Read("{\n \"a\": 1,,\n \"b\": oops,\n \"c\": [1 2],\n \"d\": 4\n}", problems)!;
        Assert.Equal(4, root.Member("d")!.Number);
        Assert.Equal([2, 3, 4], problems.Select(problem => problem.Line).Distinct());
    }

    [Fact]
    public void DeepNesting_IsRefusedAndNotACrash()
    {
        var problems = new List<DocumentProblem>();
        JsonReader.Read(new string('[', 1_000_000), problems);
        Assert.Contains("nested deeper than 64 levels", problems[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void EndlessMistakes_AreCutOff()
    {
        var problems = new List<DocumentProblem>();
        JsonReader.Read("[" + string.Concat(Enumerable.Repeat("?,", 100_000)) + "]", problems);
        Assert.InRange(problems.Count, 1, JsonReader.MostProblems + 1);
    }

    [Fact]
    public void TooLongText_IsRefused()
    {
        var problems = new List<DocumentProblem>();
        Assert.Null(JsonReader.Read(new string(' ', JsonReader.LongestText + 1), problems));
        Assert.Contains("at most 16777216 are read", Assert.Single(problems).Message, StringComparison.Ordinal);
    }

    // System.Text.Json is the outside judge: a text that it accepts, ours accepts with the same content, and one that it refuses, ours refuses.
    [Fact]
    public void MutatedTexts_AreJudgedAsBySystemTextJson()
    {
        const string seed = "{\"name\": \"lantern buoy\", \"window\": \"10 ms\", \"list\": [1, -2.50e-3, true, false, null, {\"x\": \"\\u00b5 \\n\"}], \"deep\": {\"a\": {\"b\": []}}}";
        const string alphabet = "{}[]\",:\\ 0123456789.eE+-truefalsn\n\tµ/x\u0001";
        var random = new Random(20260);
        for (int round = 0; round < 20_000; round++)
        {
            var text = new StringBuilder(seed);
            for (int change = random.Next(1, 4); change > 0; change--)
            {
                int at = random.Next(text.Length);
                switch (random.Next(3))
                {
                    case 0: text[at] = alphabet[random.Next(alphabet.Length)]; break;
                    case 1: text.Insert(at, alphabet[random.Next(alphabet.Length)]); break;
                    default: text.Remove(at, 1); break;
                }
            }
            Compare(text.ToString());
        }
    }

    [Property(MaxTest = 300)]
    public Property Writer_IsReadBackByBothReaders() => Prop.ForAll(
        ArbMap.Default.ArbFor<(NonNull<string>, NormalFloat)>(),
        pair =>
        {
            string text = new JsonWriter().BeginObject().Text("t", pair.Item1.Get).Number("n", pair.Item2.Get).BeginArray("a").Integer(null, 3).Truth(null, true).EndArray().EndObject().ToString();
            JsonValue ours = Read(text);
            using var theirs = JsonDocument.Parse(text);
            // The framework's reader misreads the last bit of some numbers on runtimes that are not modern .NET; ours must not.
#if NET
            const double Tolerance = 0;
#else
            const double Tolerance = 1e-15;
#endif
            return ours.Member("t")!.Text == pair.Item1.Get && ours.Member("n")!.Number.Equals(pair.Item2.Get)
                && Math.Abs(theirs.RootElement.GetProperty("n").GetDouble() - pair.Item2.Get) <= Tolerance * Math.Abs(pair.Item2.Get);
        });

    [Fact]
    public void WrongMembers_AreAllReportedWithPathAndSuggestion()
    {
        var problems = new List<DocumentProblem>();
        var document = new DocumentObject(JsonReader.Read("{\n \"windwo\": \"10 ms\",\n \"count\": \"three\",\n \"mode\": \"avrage\"\n}", problems)!, "", problems);
        document.Text("window");
        document.OptionalNumber("count", 0, 10);
        document.Choice("mode", new Dictionary<string, int> { ["sample"] = 0, ["average"] = 1 }, 0);
        document.RefuseOthers();
        Assert.Equal(
            [
                "line 1, column 1: window: this member is missing; expected a text",
                "line 3, column 11: count: found a text, expected a number",
                "line 4, column 10: mode: found \"avrage\", expected one of sample, average; did you mean \"average\"?",
                "line 2, column 2: windwo: this member is not known here; did you mean \"window\"?",
            ],
            problems.Select(problem => problem.ToString()));
    }

    private static JsonValue Read(string text)
    {
        var problems = new List<DocumentProblem>();
        JsonValue? value = JsonReader.Read(text, problems);
        Assert.Empty(problems);
        return value!;
    }

    private static void Compare(string text)
    {
        var problems = new List<DocumentProblem>();
        JsonValue? ours = JsonReader.Read(text, problems);
        JsonDocument? theirs = null;
        try
        {
            theirs = JsonDocument.Parse(text);
        }
        catch (JsonException)
        {
        }
        using (theirs)
        {
            // Two rules where ours is stricter on purpose: a member twice in one object, and a number beyond a double.
            bool stricter = problems.All(problem => problem.Message.Contains("twice", StringComparison.Ordinal) || problem.Message.Contains("not a JSON number", StringComparison.Ordinal));
            if (theirs is null)
                Assert.True(problems.Count > 0, text);
            else if (problems.Count > 0)
                Assert.True(stricter, text + " -> " + problems[0]);
            else
                AssertSame(theirs.RootElement, ours!);
        }
    }

    private static void AssertSame(JsonElement expected, JsonValue actual)
    {
        switch (expected.ValueKind)
        {
            case JsonValueKind.Object:
                Assert.Equal(expected.EnumerateObject().Select(member => member.Name), actual.Members.Select(member => member.Name));
                foreach (JsonMember member in actual.Members)
                    AssertSame(expected.GetProperty(member.Name), member.Value);
                break;
            case JsonValueKind.Array:
                Assert.Equal(expected.GetArrayLength(), actual.Items.Count);
                for (int i = 0; i < actual.Items.Count; i++)
                    AssertSame(expected[i], actual.Items[i]);
                break;
            case JsonValueKind.Number: Assert.Equal(double.Parse(expected.GetRawText(), CultureInfo.InvariantCulture), actual.Number); break;
            case JsonValueKind.String: Assert.Equal(expected.GetString(), actual.Text); break;
            case JsonValueKind.Null: Assert.Equal(JsonKind.Null, actual.Kind); break;
            default: Assert.Equal(expected.GetBoolean(), actual.Truth); break;
        }
    }
}
