using Laydown.Shop.Colour;

namespace Laydown.Web.Http;

/// <summary>The optics of inks as they are answered: what holds, where it comes from, what is missing.</summary>
internal static class InkOpticsAnswer
{
    /// <summary>The answer.</summary>
    public static object Of(InkOpticsView view) => new
    {
        Condition = view.Condition.Id,
        InkSet = view.Inks.Id,
        view.Optics,
        Inks = view.Lights.Select(l => new { l.Role, l.IsGeneric, l.AbsorptionFrom, l.ScatterFrom, l.Why, l.Ink.Density, l.Ink.Absorption, l.Ink.Scatter }),
        view.Missing,
        view.Hiding,
    };
}
