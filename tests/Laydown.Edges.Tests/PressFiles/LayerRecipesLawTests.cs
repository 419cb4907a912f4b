using Laydown.Measures;
using Laydown.Output.PressFiles;
using Laydown.Press.Stacks;
using Laydown.Raster.Masks;
using Laydown.Raster.Tiles;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Recipes in their two parts: what is done before plates are scaled, and what at the resolution of the press.</summary>
public sealed class LayerRecipesLawTests
{
    private static readonly string[] Plates = ["Cyan", "Magenta", "Yellow", "Black", "Alpha"];

    private static readonly MaskShaping Shaping = new(1, 0.6, [0, 80, 100], [new(2, 3, 4, 5)]);

    public static TheoryData<string> Layers() => ["colour", "colour at 60 %", "under image", "inverse", "alpha", "negative mask", "flood at 150 %", "block-out"];

    [Theory, MemberData(nameof(Layers))]
    public void Stages_at_source_look_at_one_pixel_alone_and_both_parts_together_are_the_way_without_scaling(string name)
    {
        LayerRecipe recipe = Of(LayerOf(name));
        Assert.All(recipe.AtSource, s => Assert.Equal(0, s.ReachPixels));
        Picture picture = new();
        Assert.Equal(picture.Through(recipe.Chain()), picture.Through(new([.. recipe.AtSource, .. recipe.AtPress])));
        Assert.Equal(recipe.Planes.Count, recipe.Chain().TargetInks(Plates.Length));
    }

    [Fact]
    public void White_under_a_picture_scales_one_plane_and_is_cut_to_two_levels_afterwards()
    {
        LayerRecipe recipe = Of(LayerOf("under image"));
        Assert.Equal(1, new StageChain(recipe.AtSource).TargetInks(Plates.Length));
        Assert.IsType<Threshold>(recipe.AtPress[0]);
    }

    [Fact]
    public void Limits_of_colour_hold_again_where_scaling_overshoots()
    {
        LayerRecipe recipe = Of(World.Colour);
        Picture full = new((_, _) => Tile.Full);
        ushort[] left = full.Through(new(recipe.AtPress), recipe.Planes.Count);
        for (int i = 0; i < left.Length / recipe.Planes.Count; i++)
            Assert.True(Enumerable.Range(0, recipe.Planes.Count).Sum(ink => left[(ink * Picture.Side * Picture.Side) + i]) <= recipe.LimitPercent * 655.35);
    }

    [Fact]
    public void Distances_are_the_same_in_millimetres_whatever_the_dots()
    {
        // 1 mm is 28.3 dots of 720 dpi and 42.5 of 1080 dpi: the reach is that of the finer way.
        LayerRecipe square = Recipe(LayerOf("alpha"), new(720, PixelShape.Square, 0, 40)), fine = Recipe(LayerOf("alpha"), new(720, new(720, 1080), 0, 40));
        Assert.Equal(28 + 16 + 28, square.AtPress.Sum(s => s.ReachPixels));
        Assert.Equal(43 + 24 + 43, fine.AtPress.Sum(s => s.ReachPixels), 2.0);
    }

    [Fact]
    public void Places_kept_out_count_from_the_lower_left_of_the_finished_piece()
    {
        PressPixels pixels = new(254, new(254, 508), 3, 40);
        Assert.Equal(new PixelRect((3 + 2) * 10, (3 + 40 - 8) * 20, 40, 100), pixels.Of(new RectMm(2, 3, 4, 5)));
        Assert.Equal(new PixelRect(0, 0, 460, 920), pixels.Of(new RectMm(-3, -3, 46, 46)));
    }

    private static Layer LayerOf(string name) => name switch
    {
        "colour" => World.Colour,
        "colour at 60 %" => World.Colour with { StrengthPercent = 60 },
        "under image" => World.White(WhiteSource.UnderImage, choke: 0.5).With(Shaping),
        "inverse" => World.White(WhiteSource.Inverse).With(Shaping),
        "alpha" => World.White(WhiteSource.Alpha, choke: 1).With(Shaping),
        "negative mask" => World.White(WhiteSource.MaskPicture) with { Negative = true, FeatherMm = -0.7 },
        "flood at 150 %" => World.White(WhiteSource.Flood, 150) with { KeepOutsMm = Shaping.KeepOutsMm },
        _ => World.White(WhiteSource.Alpha, choke: -0.4) with { Group = InkGroup.BlockOut, MinFeatureMm = -0.5 },
    };

    private static LayerRecipe Of(Layer layer) => Recipe(layer, new(100, PixelShape.Square, 1, 8));

    private static LayerRecipe Recipe(Layer layer, PressPixels pixels) =>
        new LayerRecipes(World.Condition(), World.Inks, null).Of("piece.pdf", layer, Plates, [], pixels).Value;

    /// <summary>Discs of ink with speckle, five plates.</summary>
    private sealed class Picture(Func<int, int, ushort>? value = null) : ITileSource
    {
        public const int Side = 60;

        public int Inks { get; private set; } = Plates.Length;

        public int Rows => Side;

        public int Columns => Side;

        public ushort[] Through(StageChain chain, int planes = 5)
        {
            Inks = planes;
            Gathered all = new(chain.TargetInks(planes));
            chain.Run(this, 17, 23, all, CancellationToken.None);
            return all.Values;
        }

        public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
        {
            for (int i = 0; i < into.Length; i++)
            {
                int x = firstColumn + i, dx = (x % 30) - 15, dy = (row % 30) - 15;
                into[i] = value?.Invoke(row, x) ?? ((dx * dx) + (dy * dy) > 120 ? (ushort)0 : (ushort)(Painter.Noise("p", Plates[ink], x, row) * 257));
            }
        }
    }

    private sealed class Gathered(int inks) : ITileSink
    {
        public ushort[] Values { get; } = new ushort[inks * Picture.Side * Picture.Side];

        public void Take(int firstRow, int firstColumn, Tile tile)
        {
            for (int ink = 0; ink < tile.Inks; ink++)
            {
                for (int row = 0; row < tile.Rows; row++)
                    tile.Row(ink, row).CopyTo(Values.AsSpan((((ink * Picture.Side) + firstRow + row) * Picture.Side) + firstColumn, tile.Columns));
            }
        }
    }
}
