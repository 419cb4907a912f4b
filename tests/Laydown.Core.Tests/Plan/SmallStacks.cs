using Laydown.Press.Stacks;

namespace Laydown.Core.Tests.Plan;

/// <summary>Every stack of up to so many layers of colour, white, clear and block-out on two faces.</summary>
internal static class SmallStacks
{
    private static readonly InkGroup[] Groups = Enum.GetValues<InkGroup>();

    /// <summary>All sequences of 0 to <paramref name="most"/> layers, each with every share between the faces: 7737 for 5.</summary>
    public static IEnumerable<IReadOnlyList<Layer>> UpTo(int most) =>
        from count in Enumerable.Range(0, most + 1)
        from number in Enumerable.Range(0, (int)Math.Pow(Groups.Length, count))
        from onFirst in Enumerable.Range(0, count + 1)
        select (IReadOnlyList<Layer>)[.. Enumerable.Range(0, count).Select(i => Of(
            Groups[number / (int)Math.Pow(Groups.Length, i) % Groups.Length], i < onFirst ? SheetFace.First : SheetFace.Second))];

    /// <summary>A full layer, mirrored as a viewer in front needs it.</summary>
    public static Layer Of(InkGroup group, SheetFace face) =>
        new(face, group, group == InkGroup.Colour ? null : WhiteSource.Flood, null, 1, 100, 0, face == SheetFace.Second);
}
