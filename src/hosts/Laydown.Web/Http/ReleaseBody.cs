namespace Laydown.Web.Http;

/// <summary>A release of a layout, or the taking back of one.</summary>
/// <param name="By">Who, by name.</param>
/// <param name="Mark">Mark of the layout that was looked at; not looked at when a release is taken back.</param>
public sealed record ReleaseBody(string? By, string? Mark);
