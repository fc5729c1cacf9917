using System;
using System.Reflection;
using System.Threading.Tasks;
using Microsoft.AspNetCore.Http;

/// <summary>
/// A quantity from the route or the query that is refused with the library's own message. A parameter of the plain type binds as well, by its <c>TryParse</c>, but then the
/// answer to a bad value names the parameter and not what is wrong with it.
/// </summary>
internal readonly record struct Bound<T>(T Value)
    where T : struct, IParsable<T>
{
    public static ValueTask<Bound<T>> BindAsync(HttpContext context, ParameterInfo parameter)
    {
        string? text = context.Request.RouteValues[parameter.Name!] as string ?? context.Request.Query[parameter.Name!];
        try
        {
            return new(new Bound<T>(T.Parse(text ?? "", null)));
        }
        catch (FormatException refusal)
        {
            throw new BadHttpRequestException(parameter.Name + ": " + refusal.Message, StatusCodes.Status400BadRequest, refusal);
        }
    }
}
