using System.Globalization;

namespace Laydown.Web.Press;

/// <summary>How instants of upkeep are written: day and time of the shop.</summary>
internal static class CareSay
{
    /// <summary>Such as <c>Fri 4 Dec, 17:30</c>.</summary>
    public static string When(DateTimeOffset at) => at.ToString("ddd d MMM, HH:mm", CultureInfo.InvariantCulture);
}
