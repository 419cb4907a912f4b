using Laydown.Optics.Looks;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Layers;

namespace Laydown.Edges.Tests.Looks;

/// <summary>Looks of a small panel: cyan to black, white, cyan to black, on the second surface.</summary>
internal static class LookSamples
{
    public static IReadOnlyList<LookedLayer> Layers { get; } = [Colour, new(SheetFace.Second, InkGroup.White, 100, [new(InkRole.White, "White")]), Colour];

    private static LookedLayer Colour => new(SheetFace.Second, InkGroup.Colour, 260,
        [new(InkRole.Cyan, "Cyan"), new(InkRole.Magenta, "Magenta"), new(InkRole.Yellow, "Yellow"), new(InkRole.Black, "Black")]);

    public static LookRecord Record(string itemId, int width, int height) => new(
        itemId, "", new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero), LookHow.Solved, width, height, 150, new(width * 25.4 / 150, height * 25.4 / 150), 0, Layers,
        "acrylic-clear-5", "eight-inks", "long-belt-clear-sheets", true, SheetFace.First, LookScene.Of(Scene.Day()), LookScene.Of(Scene.Lit()), null,
        LookWish.Usual, new(new("day.png", 1, null), new("night.png", 1, null), PairPlacing.Careful, PairPlacing.Careful, [new(1, 2, 3, 4, PairUnit.Mm)]),
        new([1], 12.5, 0.4, 130, 220, ["because"]),
        new(new(1, 2, 3), new(1, 2, 3), new(4, 5, 6), new(4, 5, 6), 12, [new("r", "words", 12)], 0.1, 0.4, 0.8, 3, 300, 100, 2, [0.1], [new("white", 1, 2, 3, 4)], ["a note"]),
        [], [], null);

    public static byte[] Planes(LookRecord record) =>
        [.. Enumerable.Range(0, record.PlaneCount * record.WidthPx * record.HeightPx).Select(i => (byte)(i * 37 % 61))];

    /// <summary>Writes and publishes one.</summary>
    public static async Task<LookRecord> PutAsync(LookShelf shelf, LookRecord record)
    {
        using LookDraft draft = shelf.Begin(record.ItemId);
        await draft.WriteAsync(LookRecord.PlanesFile, Planes(record), CancellationToken.None);
        return await draft.PublishAsync(record with { Files = await draft.FilesAsync(CancellationToken.None) }, CancellationToken.None);
    }
}
