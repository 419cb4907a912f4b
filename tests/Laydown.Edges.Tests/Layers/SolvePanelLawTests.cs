using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Layers;
using Xunit;

namespace Laydown.Edges.Tests.Looks;

public sealed class SolvePanelLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly PanelDesk desk = new();

    public void Dispose() => desk.Dispose();

    [Fact]
    public async Task A_solved_panel_is_a_whole_folder_that_can_be_seen_again()
    {
        StoredLook look = (await desk.Solver().SolveAsync(desk.Request(), null, None)).Value;
        string[] files = [.. Directory.GetFiles(look.Folder).Select(Path.GetFileName).OfType<string>().Order(StringComparer.Ordinal)];
        Assert.Equal(["day.png", "look.json", "map-day.png", "map-ghost.png", "map-night.png", "map-reason.png", "night.png", "planes.raw", "wish.raw"], files);
        LookRecord read = LookShelf.Read(look.Folder, "panel").Value;
        Assert.Equal((48, 32, LookHow.Solved, "a note"), (read.WidthPx, read.HeightPx, read.How, read.Note));
        Assert.Equal([InkGroup.Colour, InkGroup.White, InkGroup.Colour], read.Layers.Select(l => l.Group));
        Assert.Equal(6 * 48 * 32, new FileInfo(Path.Combine(look.Folder, "wish.raw")).Length);
        Assert.True(new LookLights(desk.Shop.Catalogue).Of(read).IsTaken);
        Assert.Empty(Directory.EnumerateFileSystemEntries(desk.Scratch));
        Assert.Equal(read.PlaneCount, read.Report!.MeanInk.Count);
    }

    [Theory]
    [InlineData(WhiteChoice.Fixed)]
    [InlineData(WhiteChoice.Stepped)]
    [InlineData(WhiteChoice.Free)]
    public async Task The_same_bytes_come_out_for_any_bands_and_any_number_of_threads(WhiteChoice white)
    {
        LookWish wish = LookWish.Usual with { White = white };
        List<byte[]> planes = [];
        foreach ((int band, int threads) in new[] { (1 << 15, 2), (1, 1), (48 * 7, 3) })
        {
            StoredLook look = (await desk.Solver(band, threads).SolveAsync(desk.Request(wish), null, None)).Value;
            planes.Add(PanelDesk.Planes(look));
            Directory.Delete(look.Folder, recursive: true);
        }

        Assert.All(planes, p => Assert.True(p.AsSpan().SequenceEqual(planes[0])));
    }

    [Fact]
    public async Task Limits_hold_at_every_pixel_and_light_inks_lie_in_front_of_the_white_alone()
    {
        StoredLook look = (await desk.Solver().SolveAsync(desk.Request(), null, None)).Value;
        byte[] planes = PanelDesk.Planes(look);
        int size = 48 * 32, first = 0;
        List<int> lights = [];
        foreach (LookedLayer layer in look.Record.Layers)
        {
            for (int i = 0; i < size; i++)
                Assert.True(Enumerable.Range(first, layer.Inks.Count).Sum(p => planes[(p * size) + i]) <= Math.Floor(layer.LimitPercent * 255 / 100));
            int at = first;
            int MostOf(InkRole role) => layer.Inks.Index().Where(p => p.Item.Role == role)
                .Select(p => (int)planes.AsSpan((at + p.Index) * size, size).ToArray().Max()).DefaultIfEmpty(0).Max();
            if (layer.Group == InkGroup.Colour)
            {
                // A hue is made by its light ink, its dark one or both.
                lights.Add(MostOf(InkRole.LightCyan) + MostOf(InkRole.LightMagenta));
                Assert.True(MostOf(InkRole.Cyan) + MostOf(InkRole.LightCyan) > 0);
                Assert.True(MostOf(InkRole.Magenta) + MostOf(InkRole.LightMagenta) > 0);
                Assert.True(MostOf(InkRole.Yellow) > 0 && MostOf(InkRole.Black) > 0);
            }

            first += layer.Inks.Count;
        }

        Assert.Equal(2, lights.Count);
        Assert.Equal(0, lights.Min());
        Assert.True(lights.Max() > 0);
    }

    [Fact]
    public async Task What_was_aimed_at_is_kept_as_numbers()
    {
        StoredLook look = (await desk.Solver().SolveAsync(desk.Request(LookWish.Usual with { LiftPercent = 10 }), null, None)).Value;
        byte[] wish = await File.ReadAllBytesAsync(Path.Combine(look.Folder, LookRecord.WishFile), None);
        int size = 48 * 32;

        // Night at column 47, row 31: sRGB 94, 124, 39. Its L* by IEC 61966-2-1 and CIE 1976 is 48.2; one code is 0.4.
        Assert.Equal(48.2, wish[(3 * size) + size - 1] / 2.55, 0.5);
        Assert.Equal(10, look.Record.Aim!.LiftPercent);
        Assert.All(wish.Take(size), l => Assert.True(l / 2.55 >= 10 - 0.2));
    }

    [Fact]
    public async Task Two_white_layers_are_printed_where_one_does_not_hold_the_white()
    {
        StoredLook look = (await desk.Solver().SolveAsync(desk.Request(whitePercent: 160), null, None)).Value;
        Assert.Equal(2, look.Record.Layers.Count(l => l.Group == InkGroup.White));
        Assert.Equal([0.8], look.Record.Wish!.WhiteStrengths);
        byte[] planes = PanelDesk.Planes(look);
        int size = 48 * 32;
        foreach (int plane in new[] { 6, 7 })
            Assert.All(planes.Skip(plane * size).Take(size), v => Assert.Equal(204, v));
    }

    [Theory]
    [InlineData(0.05)]
    [InlineData(0.4)]
    [InlineData(0.9)]
    public async Task A_cancel_leaves_nothing_and_the_next_try_is_whole(double at)
    {
        using CancellationTokenSource stop = new();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => desk.Solver().SolveAsync(desk.Request(), new At(at, stop), stop.Token));
        Assert.False(Directory.Exists(desk.Out));
        Assert.DoesNotContain(Directory.GetFileSystemEntries(desk.Shop.Folder.Root), p => Path.GetFileName(p).StartsWith('.'));
        Assert.Empty(Directory.EnumerateFileSystemEntries(desk.Scratch));
        Assert.True((await desk.Solver().SolveAsync(desk.Request(), null, None)).IsTaken);
    }

    [Fact]
    public async Task Progress_never_falls_and_ends_at_the_whole()
    {
        List<double> told = [];
        (await desk.Solver().SolveAsync(desk.Request(), new Each(told.Add), None)).Value.ToString();
        Assert.Equal(told.Order(), told);
        Assert.Equal(1, told[^1]);
        Assert.True(told.Count > 4);
    }

    [Fact]
    public async Task A_proof_in_another_profile_carries_it()
    {
        string profile = Laydown.Edges.Tests.Artwork.WorkFolder.RgbProfile;
        StoredLook look = (await desk.Solver().SolveAsync(desk.Request() with { ProofProfile = profile }, null, None)).Value;
        using NetVips.Image image = NetVips.Image.NewFromFile(Path.Combine(look.Folder, "day.png"));
        Assert.Equal(await File.ReadAllBytesAsync(profile, None), (byte[])image.Get("icc-profile-data"));
    }

    private sealed class At(double share, CancellationTokenSource stop) : IProgress<double>
    {
        public void Report(double value)
        {
            if (value >= share)
                stop.Cancel();
        }
    }

    private sealed class Each(Action<double> told) : IProgress<double>
    {
        private readonly Lock gate = new();

        public void Report(double value)
        {
            lock (gate)
                told(value);
        }
    }
}
