using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using Xunit.Sdk;

namespace Acquisition.Core.Tests.Handbook;

/// <summary>
/// Feeds a theory with the check values whose id starts with one of the prefixes (a complete id is a prefix too). The coverage test counts by these
/// attributes which values are used by which area.
/// </summary>
[AttributeUsage(AttributeTargets.Method, AllowMultiple = true)]
public sealed class HandbookDataAttribute(params string[] prefixes) : DataAttribute
{
    public IEnumerable<CheckValue> Values =>
        CheckValue.All.Values.Where(value => prefixes.Any(prefix => value.Id.StartsWith(prefix, StringComparison.Ordinal)));

    public override IEnumerable<object[]> GetData(MethodInfo testMethod)
    {
        foreach (string prefix in prefixes)
        {
            if (!CheckValue.All.Keys.Any(id => id.StartsWith(prefix, StringComparison.Ordinal)))
                throw new InvalidOperationException($"no check value starts with {prefix}");
        }
        return Values.Select(value => new object[] { value.Id });
    }
}
