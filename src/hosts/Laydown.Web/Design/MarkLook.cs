namespace Laydown.Web.Design;

/// <summary>How a state is drawn.</summary>
/// <param name="Word">The word beside the shape.</param>
/// <param name="Shape">Inner SVG on a field of 16 × 16; every state has a shape of its own.</param>
/// <param name="Tone">Colour class: <c>bad</c>, <c>look</c>, <c>done</c> or nothing.</param>
public sealed record MarkLook(string Word, string Shape, string Tone)
{
    private const string Ring = "<circle cx='8' cy='8' r='6.5'/>";

    /// <summary>The look of a state or severity.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such state.</exception>
    public static MarkLook Of(string state) => state switch
    {
        "Waiting" => new("Waiting", Ring, ""),
        "Ready" => new("Ready", Ring + "<path class='full' d='M8 1.5a6.5 6.5 0 0 1 0 13z'/>", ""),
        "Planned" => new("Planned", Ring + "<circle class='full' cx='8' cy='8' r='2'/>", ""),
        "InProgress" => new("Being made", "<path d='M2 3h12M2 8h12M2 13h7'/>", ""),
        "Completed" => new("Made", "<circle class='full' cx='8' cy='8' r='6.5'/>", "done"),
        "Stopped" => new("Held back", "<rect class='full' x='2' y='2' width='12' height='12'/>", "bad"),
        "Aborted" => new("Not made", "<path d='M2.5 2.5l11 11M13.5 2.5l-11 11'/>", "bad"),
        "Stop" => new("Stop", "<rect class='full' x='2' y='2' width='12' height='12'/>", "bad"),
        "Warn" => new("Warn", "<path class='full' d='M8 2l6.5 12h-13z'/>", "look"),
        "Note" => new("Note", "<path d='M8 6v8M8 2v2'/>", ""),
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "A state: wanted one that has a shape."),
    };
}
