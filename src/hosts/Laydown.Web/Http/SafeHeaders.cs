namespace Laydown.Web.Http;

/// <summary>Headers of every answer: only the page's own files may be loaded, nothing may frame it, and no other site may make it act.</summary>
/// <param name="next">What answers.</param>
public sealed class SafeHeaders(RequestDelegate next)
{
    /// <summary>Rules for pages: everything from here, nothing inline.</summary>
    public const string PagePolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
        + "form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    /// <summary>Rules for papers made into a run folder: their own styles and pictures, no script, no connection.</summary>
    public const string PaperPolicy =
        "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' data:; font-src 'self' data:; sandbox allow-downloads; frame-ancestors 'none'";

    /// <summary>Sets the headers, and refuses a change asked for by another site.</summary>
    public Task InvokeAsync(HttpContext context)
    {
        IHeaderDictionary headers = context.Response.Headers;
        headers.ContentSecurityPolicy = PagePolicy;
        headers.XContentTypeOptions = "nosniff";

        // Not "no-referrer": with that, browsers hide the origin of the page's own forms as well.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=(), usb=()";
        if (IsChange(context.Request.Method) && !IsOwn(context.Request))
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return Task.CompletedTask;
        }

        return next(context);
    }

    private static bool IsChange(string method) =>
        !HttpMethods.IsGet(method) && !HttpMethods.IsHead(method) && !HttpMethods.IsOptions(method);

    // Browsers always name the origin of a change; programs such as the command line name none.
    private static bool IsOwn(HttpRequest request)
    {
        string? origin = request.Headers.Origin;
        return string.IsNullOrEmpty(origin) || string.Equals(origin, Invariant($"{request.Scheme}://{request.Host}"), StringComparison.OrdinalIgnoreCase);
    }
}
