using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>Links to the sections of a long page.</summary>
public sealed partial class PageContents
{
    /// <summary>Path of the page itself; needed because links are read against the site's root.</summary>
    [Parameter, EditorRequired]
    public string Path { get; set; } = "";

    /// <summary>Section ids with their words, in order.</summary>
    [Parameter, EditorRequired]
    public IReadOnlyList<(string Id, string Text)> Places { get; set; } = [];
}
