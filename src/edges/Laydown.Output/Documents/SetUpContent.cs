using Laydown.Measures;

namespace Laydown.Output.Documents;

/// <summary>What a set-up sheet says, the same words for page and PDF.</summary>
/// <param name="ShopName">The shop.</param>
/// <param name="RunId">The run.</param>
/// <param name="PagePath">Address of the run's page, which the QR code holds; the path alone where the shop does not say where its pages are.</param>
/// <param name="Subject">Press and stock in one line.</param>
/// <param name="Due">When it is due.</param>
/// <param name="Figures">The large figures.</param>
/// <param name="Refusals">Why it must not be released.</param>
/// <param name="Measure">What to measure.</param>
/// <param name="MeasurePlaces">How many readings of the thickness are written down.</param>
/// <param name="Belt">How sheets lie.</param>
/// <param name="BeltDrawing">The belt to scale.</param>
/// <param name="Layers">Layers in the order of printing.</param>
/// <param name="LayersBecause">How order and mirroring were derived.</param>
/// <param name="LayersDrawing">The section through sheet and ink.</param>
/// <param name="SheetDrawings">The sheets to scale.</param>
/// <param name="Mode">Why this mode, and why no other.</param>
/// <param name="Inks">Ink.</param>
/// <param name="Checks">First-piece checks.</param>
/// <param name="Items">What is printed.</param>
/// <param name="Cautions">Cautions, the rule over them last.</param>
/// <param name="Why">How the numbers were computed.</param>
/// <param name="Invented">Words that say what is invented, or empty.</param>
internal sealed record SetUpContent(
    string ShopName,
    string RunId,
    string PagePath,
    string Subject,
    string Due,
    IReadOnlyList<KeyFigure> Figures,
    IReadOnlyList<string> Refusals,
    IReadOnlyList<string> Measure,
    int MeasurePlaces,
    IReadOnlyList<NamedValue> Belt,
    Drawing BeltDrawing,
    IReadOnlyList<NamedValue> Layers,
    IReadOnlyList<string> LayersBecause,
    Drawing LayersDrawing,
    IReadOnlyList<Drawing> SheetDrawings,
    IReadOnlyList<string> Mode,
    IReadOnlyList<InkRow> Inks,
    IReadOnlyList<string> Checks,
    IReadOnlyList<NamedValue> Items,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<Figure> Why,
    string Invented)
{
    /// <summary>How sheets printed on both faces are turned and laid; empty where one face is printed.</summary>
    public IReadOnlyList<NamedValue> Faces { get; init; } = [];

    /// <summary>Both faces on the belt, to scale; null where one is printed.</summary>
    public Drawing? FacesDrawing { get; init; }

    /// <summary>What was measured and by whom; null for a form to fill in.</summary>
    public LetGoRows? LetGo { get; init; }
}
