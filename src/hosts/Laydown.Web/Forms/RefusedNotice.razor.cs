using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Forms;

/// <summary>What speaks against a form, each with the way to its field; it has the focus when the page opens.</summary>
public sealed partial class RefusedNotice
{
    /// <summary>The form; null for none, then nothing is shown.</summary>
    [Parameter, EditorRequired]
    public RefusedForm? Of { get; set; }

    /// <summary>What was not done.</summary>
    [Parameter, EditorRequired]
    public string Heading { get; set; } = "";

    [Inject]
    private NavigationManager Go { get; set; } = null!;

    // Links within a page count from its base address, so they name the page.
    private string Here => "/" + Go.ToBaseRelativePath(Go.Uri).Split('#')[0];
}
