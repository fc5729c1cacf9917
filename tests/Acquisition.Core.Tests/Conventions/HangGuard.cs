using System;
using System.Runtime.ExceptionServices;
using System.Threading;
using Xunit;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>Runs a test's body on a thread of its own and gives up on it when it hangs. The patience is no measure of speed: whatever ends at all ends in a small part of it.</summary>
internal static class HangGuard
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(15);

    internal static void Run(Action body, Func<string> where, int stackBytes = 0)
    {
        ExceptionDispatchInfo? failure = null;
        var thread = new Thread(
            () =>
            {
                try
                {
                    body();
                }
                catch (Exception thrown)
                {
                    failure = ExceptionDispatchInfo.Capture(thrown);
                }
            },
            stackBytes) { IsBackground = true };
        thread.Start();
        Assert.True(thread.Join(Patience), "hangs: " + where());
        failure?.Throw();
    }
}
