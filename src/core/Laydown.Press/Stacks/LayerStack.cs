namespace Laydown.Press.Stacks;

/// <summary>Ordered ink layers of a piece, written from the sheet outward for each face, in the order they are printed.</summary>
/// <param name="Layers">First printed first.</param>
/// <param name="Lit">Whether a lamp stands behind the piece, on the side of the second surface.</param>
/// <param name="Because">How order and mirroring were derived, one sentence for each decision.</param>
/// <param name="SeenFrom">Who looks at it.</param>
/// <param name="DayNight">Whether page 1 is to be seen by day and page 2 only with the lamp on.</param>
public sealed record LayerStack(
    IReadOnlyList<Layer> Layers, bool Lit, IReadOnlyList<string> Because, SeenFrom SeenFrom = SeenFrom.OneSide, bool DayNight = false)
{
    /// <summary>Those who look at it, the front one first.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public IReadOnlyList<Viewer> Viewers => SeenFrom == SeenFrom.BothSides ? [Viewer.Front, Viewer.Back] : [Viewer.Front];

    /// <summary>Layers on one face, from the sheet outward.</summary>
    public IEnumerable<Layer> On(SheetFace face) => Layers.Where(l => l.Face == face);

    /// <summary>A short text that is equal for equal stacks, such as <c>1:Colour+White(Flood100)+Colour</c>; runs are formed by it.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string Key => string.Join('/', Layers.GroupBy(l => l.Face).Select(g =>
        Invariant($"{(int)g.Key + 1}:") + string.Join('+', g.Select(Word))));

    private static string Word(Layer layer) => layer.Source is null
        ? Invariant($"{layer.Group}")
        : Invariant($"{layer.Group}({(layer.Negative ? "not " : "")}{layer.Source}{layer.StrengthPercent:0})");
}
