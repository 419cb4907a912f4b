namespace Laydown.Press.Inks;

/// <summary>Words for where the optics of an ink come from.</summary>
public static class OpticsWords
{
    /// <summary>The origin in words, such as <c>fitted to readings over black and through</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No known origin.</exception>
    public static string Of(OpticsOrigin origin) => origin switch
    {
        OpticsOrigin.Generic => "generic, no readings",
        OpticsOrigin.Thinned => "the dark ink thinned",
        OpticsOrigin.OverBlackAndWhite => "fitted to readings over black and over white",
        OpticsOrigin.OverBlackAndThrough => "fitted to readings over black and through",
        OpticsOrigin.OverWhiteAndThrough => "fitted to readings over white and through",
        OpticsOrigin.OverBothAndThrough => "fitted to readings over black, over white and through",
        OpticsOrigin.Through => "fitted to readings through",
        OpticsOrigin.OverOne => "fitted to readings over one backing",
        _ => throw new ArgumentOutOfRangeException(nameof(origin), origin, "Origin: wanted a known origin."),
    };
}
