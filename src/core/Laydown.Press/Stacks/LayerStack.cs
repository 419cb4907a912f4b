namespace Laydown.Press.Stacks;

/// <summary>Ordered ink layers of a piece, written from the sheet outward for each face, in the order they are printed.</summary>
/// <param name="Layers">First printed first.</param>
/// <param name="Lit">Whether a lamp stands behind the piece.</param>
/// <param name="Because">How order and mirroring were derived, one sentence for each decision.</param>
public sealed record LayerStack(IReadOnlyList<Layer> Layers, bool Lit, IReadOnlyList<string> Because)
{
    /// <summary>Layers on one face, from the sheet outward.</summary>
    public IEnumerable<Layer> On(SheetFace face) => Layers.Where(l => l.Face == face);

    /// <summary>A short text that is equal for equal stacks, such as <c>1:Colour+White(Flood)+Colour</c>; runs are formed by it.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string Key => string.Join('/', Layers.GroupBy(l => l.Face).Select(g =>
        Invariant($"{(int)g.Key + 1}:") + string.Join('+', g.Select(l =>
            l.Source is null ? Invariant($"{l.Group}") : Invariant($"{l.Group}({l.Source}{l.StrengthPercent:0})")))));
}
