// Runs a C# notebook through the interactive tool without a window: run-notebook.cs <tool> <notebook> <package folder>. Prints what each code cell prints, returns or displays.
#:property Nullable=enable
using System.Diagnostics;
using System.Text.Json;
using System.Text.Json.Nodes;

(string tool, string notebook, string packages) = (args[0], args[1], Path.GetFullPath(args[2]));
var start = new ProcessStartInfo(tool, ["stdio"]) { RedirectStandardInput = true, RedirectStandardOutput = true };
start.Environment["DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT"] = "1";
start.Environment["DOTNET_ROLL_FORWARD"] = "Major"; // the tool asks for an older runtime than the SDK brings
using Process kernel = Process.Start(start)!;
try
{
    Submit("#i \"nuget:" + packages + "\"");
    foreach (JsonNode? cell in JsonNode.Parse(File.ReadAllText(notebook))!["cells"]!.AsArray())
    {
        if ((string?)cell!["cell_type"] == "code" && !Submit(string.Concat(cell["source"]!.AsArray().Select(line => (string?)line)))) return 1;
    }
    return 0;
}
finally
{
    kernel.Kill(true);
}

bool Submit(string code)
{
    string token = Guid.NewGuid().ToString("N");
    kernel.StandardInput.WriteLine(new JsonObject
    {
        ["token"] = token,
        ["commandType"] = "SubmitCode",
        ["command"] = new JsonObject { ["code"] = code, ["targetKernelName"] = "csharp" },
    }.ToJsonString());
    kernel.StandardInput.Flush();
    while (kernel.StandardOutput.ReadLine() is { } line)
    {
        if (!line.StartsWith('{')) continue;
        JsonNode envelope = JsonNode.Parse(line)!;
        switch ((string?)envelope["eventType"])
        {
            case "StandardOutputValueProduced":
                Console.Write(Shown(envelope, "text/plain"));
                break;
            case "ReturnValueProduced" or "DisplayedValueProduced" when !Shown(envelope, "text/html").Contains("Installing Packages", StringComparison.Ordinal) && !code.StartsWith('#'):
                string html = Shown(envelope, "text/html");
                Console.WriteLine(html.Length > 0 ? $"displayed: {html[..html.IndexOfAny([' ', '>'])]}> with {html.Split("<title").Length - 1} title" : Shown(envelope, "text/plain"));
                break;
            case "CommandFailed":
                Console.WriteLine("FAILED " + (string?)envelope["event"]!["message"]);
                return false;
            case "CommandSucceeded" when (string?)envelope["command"]!["token"] == token:
                return true;
        }
    }
    Console.WriteLine("FAILED: the kernel ended");
    return false;
}

static string Shown(JsonNode envelope, string type) =>
    (string?)envelope["event"]!["formattedValues"]!.AsArray().FirstOrDefault(value => (string?)value!["mimeType"] == type)?["value"] ?? "";
