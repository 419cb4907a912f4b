using System.Text.Json;
using System.Text.RegularExpressions;
using Laydown.Measures;
using Laydown.Shop;

namespace Laydown.Web.Http;

/// <summary>What is asked for as JSON in the body of a request.</summary>
/// <remarks>Nothing is filled in: a figure that is left out is refused by name and not taken as 0, a name not as empty. An edge nobody measured would count as flat else.</remarks>
internal static partial class JsonBody
{
    private static readonly JsonSerializerOptions Whole = new(ShopJson.Compact) { RespectRequiredConstructorParameters = true, RespectNullableAnnotations = true };

    /// <summary>Reads the body and answers; faults by field where it cannot be read.</summary>
    /// <param name="context">The request.</param>
    /// <param name="wanted">What is wanted, in words.</param>
    /// <param name="answer">What is done with what was asked.</param>
    public static async Task<IResult> WithAsync<T>(HttpContext context, string wanted, Func<T, Task<IResult>> answer)
        where T : class
    {
        T? body;
        try
        {
            body = await JsonSerializer.DeserializeAsync<T>(context.Request.Body, Whole, context.RequestAborted);
        }
        catch (JsonException failure)
        {
            string[] missing = [.. Missing().Match(failure.Message).Groups[1].Value.Split(',', StringSplitOptions.RemoveEmptyEntries).Select(n => n.Trim().Trim('\''))];
            return Refused(missing.Length > 0
                ? [.. missing.Select(n => new InputFault("body", null, "/" + n, "nothing", wanted))]
                : [new("body", null, failure.Path ?? "/", failure.Message, wanted)]);
        }

        return body is null ? Refused([new("body", null, "/", "null", wanted)]) : await answer(body);
    }

    /// <summary>Faults as an answer.</summary>
    public static IResult Refused(IReadOnlyList<InputFault> faults) => ShopInterface.Answer("faults", new { Faults = faults }, StatusCodes.Status400BadRequest);

    [GeneratedRegex("missing required properties including: (.+?)\\.", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Missing();
}
