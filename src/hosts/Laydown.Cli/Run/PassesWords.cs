using Laydown.Cli.Words;
using Laydown.Raster.Passes;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary>Passes and bands as people read them.</summary>
internal static class PassesWords
{
    public static void Show(Answer answer, PassesView view, bool scans, IReadOnlyList<string> written)
    {
        answer.Line(Invariant($"{view.RunId ?? "mode"}  {view.PressId}, {view.ModeId}, seen from {view.ViewingDistanceM:0.##} m"));
        foreach (FacePasses face in view.Faces)
        {
            HeadFigures head = face.Head;
            answer.Line(
                Invariant($"{(face.Face == Laydown.Press.Stacks.SheetFace.First ? "first" : "second")} face: {face.Layers} layer(s), {head.Passes} pass(es) of ") +
                Invariant($"{head.Nozzles} nozzles {head.RowsBetweenNozzles} row(s) apart, feed {head.FeedRows} rows = {face.StepMm:0.00} mm, ") +
                Invariant($"{face.Scans} scans, {(head.TwoWay ? "two-way" : "one-way")}, feather {head.FeatherNozzles} nozzles"));
            answer.Line(
                Invariant($"  a nozzle fires every {face.ClosestColumns} column(s) at closest: {face.FiringKhz:0.0} of {face.MostKhz:0.0} kHz") +
                (face.FiresInTime ? "" : ", which it cannot"));
        }

        if (scans)
            foreach (FacePasses face in view.Faces)
                Scans(answer, face);
        answer.Line(
            Invariant($"bands  feed {view.Placement.FeedScaleUmPerM:0.#} µm/m, stands ± {view.Placement.FeedJitterUm:0.#} µm, ") +
            Invariant($"forth and back {view.Placement.TwoWayUm:0.#} µm{(view.PlacementAssumed ? ", assumed: the press tells none" : "")}; ") +
            (view.FromPicture ? "on the run's own ink" : "on tones of every ink") + (view.Mended ? "; missing nozzles are made good in its dots" : ""));
        answer.Line(Invariant($"  {view.Bands[0].Told}"));
        answer.Table(
            ["mode", "seen L*", "times threshold", "line", "main cause"],
            view.Bands.Select(b => (IReadOnlyList<string>)(b.Forecast is { } f
                ? [b.ModeId, Invariant($"{f.VisibleDeltaL:0.000}"), Invariant($"{f.TimesThreshold:0.0}"), f.IsDark ? "dark" : "light", BandWords.Of(f.Main)]
                : [b.ModeId, "-", "-", "-", b.Told])), named: true);
        answer.Table(
            ["cause alone", "seen L*"],
            (view.Bands[0].Forecast?.Shares ?? []).Select(s => (IReadOnlyList<string>)[BandWords.Of(s.Cause), Invariant($"{s.VisibleDeltaL:0.000}")]), named: true);
        foreach (string path in written)
            answer.Line(Invariant($"written  {path}"));
    }

    private static void Scans(Answer answer, FacePasses face) => answer.Table(
        ["scan", "goes", "belt mm", "rows", "nozzles"],
        face.Plan().Scans().Select(s => (IReadOnlyList<string>)
        [
            Invariant($"{s.Number}"), s.Forth ? "forth" : "back", Invariant($"{s.BeltMm:0.00}"), Invariant($"{s.FirstRow}-{s.LastRow}"),
            Invariant($"{s.FirstNozzle}-{s.LastNozzle}"),
        ]),
        named: true);
}
