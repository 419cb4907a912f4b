using Laydown.Plan.Orders;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Build;

/// <summary>Derives which face is printed.</summary>
internal static class FaceChoice
{
    /// <summary>The face or faces, with the reason.</summary>
    internal static PrintedFace Of(BuildWish wish, Stock stock, List<string> because) => wish switch
    {
        { SeenFrom: SeenFrom.BothSides } => ForBoth(wish, stock, because),
        { SeenThroughSheet: true } or { Printed: PrintedFace.Second } => Say(because, PrintedFace.Second,
            "The picture is looked at through the sheet: it is printed mirrored on the second surface."),
        { Printed: PrintedFace.Both } => Split(stock, because),
        _ => Say(because, PrintedFace.First, "The picture is looked at from the printed side: it is printed right-reading on the first surface."),
    };

    private static PrintedFace ForBoth(BuildWish wish, Stock stock, List<string> because) => (wish.Printed, stock.Light) switch
    {
        (PrintedFace.Second, _) or (PrintedFace.Auto, SheetLight.Clear) when wish.SeenThroughSheet || wish.Printed == PrintedFace.Second =>
            Say(because, PrintedFace.Second, "All layers lie on the second surface: the front picture is mirrored and seen through the sheet, the back picture reads right."),
        (PrintedFace.First, _) => Say(because, PrintedFace.First, OneFace),
        (PrintedFace.Auto, SheetLight.Clear) => Say(because, PrintedFace.First, OneFace + " The sheet is never turned, so both pictures lie in register."),
        (PrintedFace.Auto, SheetLight.Opal) => Say(because, PrintedFace.Both,
            "Viewers stand on both sides of an opal sheet: each picture lies on the face toward its viewer, where the opal cannot pale it."),
        (PrintedFace.Auto, _) => Say(because, PrintedFace.Both, "Viewers stand on both sides of an opaque sheet: each picture lies on the face toward its viewer, right-reading."),
        _ => Say(because, PrintedFace.Both, "Each picture lies on the face toward its viewer, right-reading."),
    };

    private const string OneFace =
        "All layers lie on the first surface: the front picture reads right, the back picture is mirrored, as its viewer sees it through the sheet.";

    private static PrintedFace Split(Stock stock, List<string> because)
    {
        because.Add("Layers on both faces were asked for: the picture in front right-reading on the first surface, what lies behind it mirrored on the second.");
        if (Parallax.Matters(stock))
            because.Add(Parallax.Sentence(stock));
        return PrintedFace.Both;
    }

    private static PrintedFace Say(List<string> because, PrintedFace face, string reason)
    {
        because.Add(reason);
        return face;
    }
}
