using Laydown.Layout.Hands;
using Laydown.Layout.Marks;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Shop.Check;
using Laydown.Shop.Layout;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>Laid out by hand, pieces keep the room that hems, pockets, cut marks and labels need, as they do where a search lays them.</summary>
public sealed class HandRoomsLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();

    public void Dispose() => shop.Dispose();

    [Theory]
    [InlineData(0)]
    [InlineData(90)]
    [InlineData(180)]
    [InlineData(270)]
    public void Room_put_on_and_taken_off_again_leaves_the_piece_where_it_lay(double angle)
    {
        EdgeRoom room = new(3, 17.5, 8, 40);
        Placement piece = new("p", 1, new(101.5, 77.25, 300, 200), angle is 90 or 270, AngleDegrees: angle);
        Placement grown = PieceRoom.Grown(piece, room);

        Assert.Equal(piece.Place.WidthMm + (piece.Turned ? 57.5 : 11), grown.Place.WidthMm, 1e-9);
        Assert.Equal(piece.Place.HeightMm + (piece.Turned ? 11 : 57.5), grown.Place.HeightMm, 1e-9);
        RectMm back = PieceRoom.Shrunk(grown, room).Place;
        Assert.Equal(piece.Place.XMm, back.XMm, 1e-9);
        Assert.Equal(piece.Place.YMm, back.YMm, 1e-9);
        Assert.Equal(piece.Place.Size, back.Size);
    }

    [Fact]
    public async Task The_planned_layout_is_sound_with_its_rooms_and_goes_back_as_it_came()
    {
        OpenedLayout opened = await OpenAsync();

        Assert.Empty(LayoutConflicts.Of(opened.Sheets, opened.Rules));
        Assert.True(opened.Rooms.Any);
        foreach ((SheetLayout was, SheetLayout now) in opened.Record.Run.Sheets.Zip(opened.LayoutsOf(opened.Sheets)))
        {
            Assert.Equal(was.Placements.Count, now.Placements.Count);
            foreach ((Placement one, Placement other) in was.Placements.Zip(now.Placements))
            {
                Assert.Equal(one.Place.XMm, other.Place.XMm, 1e-6);
                Assert.Equal(one.Place.YMm, other.Place.YMm, 1e-6);
                Assert.Equal(one.Place.Size.AreaM2, other.Place.Size.AreaM2, 1e-9);
            }
        }
    }

    [Fact]
    public async Task A_piece_laid_over_the_hem_of_another_is_a_conflict_though_what_is_printed_keeps_its_distance()
    {
        OpenedLayout opened = await OpenAsync();
        HandSheet sheet = opened.Sheets[0];
        HandSpot first = sheet.Spots[0];
        RectMm there = opened.Rules.PlaceOf(first);

        // Right beside the printed picture and its gap, within the hem and strip of the room.
        double printedRight = opened.LayoutsOf([sheet])[0].Placements[0].Place.RightMm;
        EdgeRoom room = opened.Rooms.Of(first.PieceId);
        HandSpot over = first with { XMm = Math.Round(printedRight + opened.Rules.GapMm - room.LeftMm + 1, 3) };
        HandSheet moved = sheet with { Spots = [first, over] };
        Assert.True(over.XMm < there.RightMm);

        LayoutReport report = new JudgeLayout(new RunRequests(shop.Catalogue)).Judge(opened, [moved], null);
        JudgedConflict conflict = Assert.Single(report.Conflicts, c => c.Kind == ConflictKind.Overlap);
        Assert.EndsWith("Room for hems, pockets, cut marks and labels is counted.", conflict.Words, StringComparison.Ordinal);
        Placement[] printed = [.. opened.LayoutsOf([moved])[0].Placements];
        Assert.False(printed[0].Place.Grown(opened.Rules.GapMm / 2).Overlaps(printed[1].Place.Grown(opened.Rules.GapMm / 2)));
        Assert.False(report.CanBeSaved);
    }

    private async Task<OpenedLayout> OpenAsync()
    {
        Item item = ShopBench.Item("TW-1-1") with { Quantity = 3, Finishing = [new(FinishingKind.Hem, 1, WidthMm: 30)], Marks = new(Cut: true) };
        shop.Put("TW-1", Samples.Order("TW-1", item));
        await shop.TakeOrders().TakeAsync(None);
        await new CheckItems(shop.Folder, shop.Catalogue, shop.Store, new ShopBench.FakeReader(), new ShopBench.FakeRenderer()).CheckAsync(None);
        PlannedRuns planned = await new PlanRuns(shop.Catalogue, shop.Store, new ShopBench.FakeMeasure()).PlanAsync(ShopBench.Today, None);
        return (await new OpenLayout(shop.Catalogue, shop.Store, null).OpenAsync(Assert.Single(planned.Runs).Run.Id, None)).Value;
    }
}
