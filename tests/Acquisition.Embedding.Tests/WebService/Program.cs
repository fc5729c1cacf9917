using System;
using System.Collections.Generic;
using System.Linq;
using System.Net.Http;
using System.Text;
using System.Text.Json;
using Acquisition.Core;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

// A service that answers bench questions, and a client that asks it over the loopback interface and prints the answers.
Console.OutputEncoding = new UTF8Encoding(false);
WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory, EnvironmentName = "Production" });
builder.Logging.ClearProviders();
builder.WebHost.UseUrls("http://127.0.0.1:0");
builder.Services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
BenchSettings bench = builder.Configuration.GetRequiredSection("Bench").Get<BenchSettings>()!;
WebApplication service = builder.Build();

#region refusals
service.UseExceptionHandler(handler => handler.Run(async context =>
{
    Exception refusal = context.Features.Get<IExceptionHandlerFeature>()!.Error;
    bool isTheirs = refusal is BadHttpRequestException or ArgumentException;
    context.Response.StatusCode = isTheirs ? StatusCodes.Status400BadRequest : StatusCodes.Status500InternalServerError;
    string message = refusal.InnerException is JsonException json ? json.Path + ": " + json.Message : refusal.Message;
    await context.Response.WriteAsJsonAsync(new { error = isTheirs ? message : "internal error" });
}));
#endregion
service.MapGet("/", () => bench);
#region endpoints
service.MapGet("/rise-time", (Frequency bandwidth) => Response.Gaussian(bandwidth).RiseTime.ToString("G4"));
service.MapGet("/rise-time/{bandwidth}", (Bound<Frequency> bandwidth) => Response.Gaussian(bandwidth.Value).RiseTime.ToString("G4"));
service.MapGet("/window", (Bound<SampleRate> rate, Bound<PointCount> memory) => memory.Value / rate.Value);
#endregion
service.MapPost("/outlook", (Question question) =>
{
    MeasurementChain chain = MeasurementChain.From(Resistance.FromOhms(33))
        .Probe(Probe.Passive(10, Resistance.FromMegaohms(10), Capacitance.FromPicofarads(12), bench.Bandwidth))
        .Into(FrontEnd.HighImpedance(Resistance.FromMegaohms(1), Capacitance.FromPicofarads(14), Response.Gaussian(bench.Bandwidth)));
    Outlook outlook = Signal.Square(question.Clock, question.Amplitude, question.RiseTime).Through(chain)
        .SampledBy(new Digitizer(bench.Rate, bench.Memory, BitDepth.FromBits(8))).Over(question.Window ?? Duration.FromMilliseconds(10));
    return new Answer(outlook.ChainBandwidth!.Value.ToString("G4"), outlook.DisplayedEdge!.Value.ToString("G4"), outlook.Timebase.Rate, outlook.Findings.Select(finding => finding.Code).ToArray());
});
await service.StartAsync();

using var client = new HttpClient { BaseAddress = new Uri(service.Services.GetRequiredService<Microsoft.AspNetCore.Hosting.Server.IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single()) };
await Ask("/");
await Ask("/rise-time?bandwidth=200%20MHz");
await Ask("/rise-time?bandwidth=200%20Mhz");
await Ask("/rise-time/350%20MHz");
await Ask("/rise-time/350%20Mhz");
await Ask("/rise-time/-350%20MHz");
await Ask("/window?rate=2%20GSa/s&memory=14%20Mpts");
await Ask("/window?rate=2%20GHz&memory=14%20Mpts");
await Ask("/window?rate=2%20GSa/s");
await Ask("/outlook", """{"clock":"24 MHz","riseTime":"2.8 ns","amplitude":"3.3 Vpp"}""");
await Ask("/outlook", """{"clock":"24 MHz","riseTime":"2.8 ns","amplitude":"3.3 V"}""");
await Ask("/outlook", """{"clock":24e6,"riseTime":"2.8 ns","amplitude":"3.3 Vpp"}""");
await service.StopAsync();

try
{
    new ConfigurationBuilder().AddInMemoryCollection([new("Bandwidth", "200 MHZ")]).Build().Get<BenchSettings>();
}
catch (InvalidOperationException refusal)
{
    Console.WriteLine("configuration: " + refusal.Message);
    for (Exception? cause = refusal.InnerException; cause is not null; cause = cause.InnerException) Console.WriteLine("  because: " + cause.Message);
}

async System.Threading.Tasks.Task Ask(string path, string? body = null)
{
    using HttpResponseMessage answer = body is null ? await client.GetAsync(path) : await client.PostAsync(path, new StringContent(body, Encoding.UTF8, "application/json"));
    Console.WriteLine($"{(int)answer.StatusCode} {Uri.UnescapeDataString(path)}{(body is null ? "" : " " + body)}\n    {await answer.Content.ReadAsStringAsync()}");
}
