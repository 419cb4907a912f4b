using Laydown.Plan.Build;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Drawings;

/// <summary>The rays that matter: room light in and back to the eye, lamp light through, and where either ends.</summary>
internal sealed class SectionLight(SvgPaper paper, double left, IReadOnlyList<SectionBand> bands)
{
    private const double In = 36, Turn = 61, Out = 87, Sun = 22;

    private double X(double across) => left + SectionBand.Left + across;

    /// <summary>The lamp box: its tubes, lit or not.</summary>
    internal static void Lamp(SvgPaper paper, double left, double y, bool lit)
    {
        double x = left + SectionBand.Left;
        paper.Path(Invariant($"M{x - 2:0.##} {y - 8:0.##}v24h{SectionBand.Breadth + 4:0.##}v-24"), Pen.Edge);
        for (int i = 0; i < 4; i++)
        {
            string tube = Invariant($"M{x + 9 + (i * 28):0.##} {y + 4}a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z");
            if (lit)
                paper.Solid(tube, accent: true);
            else
                paper.Path(tube, Pen.Edge, onPaper: true);
        }

        paper.Text(x + SectionBand.Breadth + 10, y + 9, lit ? "lamp on" : "lamp off", lit ? Lettering.Accent : Lettering.Word, 13.5);
    }

    /// <summary>Room light from one side: in, to what returns it, and back to the eye; it ends where black takes it.</summary>
    /// <param name="face">Where the piece begins on that side.</param>
    /// <param name="outward">−1 above, 1 below.</param>
    internal void Back(double face, double outward)
    {
        (double depth, bool returned) = Returned(outward);
        double from = face + (outward * 34);
        Rays(X(Sun), from + (outward * 4));
        paper.Text(left + 6, from + (outward < 0 ? -21 : 27), "room light", Lettering.Quiet, 11);
        Ray(X(In), from, X(Turn), depth, head: !returned, accent: false);
        if (returned)
        {
            Ray(X(Turn), depth, X(Out), face + (outward * 28), head: true, accent: false);
            Dot(X(Turn), depth, accent: false);
            if ((depth - (outward < 0 ? bands[^1].Bottom : bands[0].Top)) * outward < 0)
                paper.Text(X(Turn) + 9, depth + 7, "wall behind", Lettering.Quiet, 11);
        }
        else
        {
            Stop(X(Turn), depth);
        }
    }

    /// <summary>Lamp light from behind: through the piece to the eye, spread by white, ended by what is opaque.</summary>
    /// <param name="from">Where the lamp is.</param>
    /// <param name="face">Where the piece begins on the viewer's side.</param>
    /// <param name="eye">Where the eye is.</param>
    internal void Through(double from, double face, double eye)
    {
        const double window = SectionBand.Window + (SectionBand.WindowBreadth / 2);
        Beam(56, from, face, eye, toEye: !bands.Any(b => Windowed(b)));
        if (bands.Any(Windowed))
            Beam(window, from, face, eye, toEye: true);

        static bool Windowed(SectionBand band) => band.HasInkAt(56) != band.HasInkAt(window);
    }

    private void Beam(double across, double from, double face, double eye, bool toEye)
    {
        double x = X(across), y = from;
        bool spread = false;
        foreach (SectionBand band in bands.Reverse())
        {
            if (Ends(band, across))
            {
                Ray(x, y, x, band.Bottom + 6, head: true, accent: true);
                Stop(x, band.Bottom + 5);
                return;
            }

            double at = (band.Top + band.Bottom) / 2;
            if (!spread && Spreads(band, across))
            {
                Ray(x, y, x, at, head: false, accent: true);
                (spread, y) = (true, at);
            }
        }

        double aim = toEye && across < SectionBand.Window ? X(SectionEyes.Across - SectionBand.Left) : x;
        if (spread)
        {
            Ray(x, y, x - 15, face - 10, head: true, accent: true);
            if (!toEye || across < SectionBand.Window)
                Ray(x, y, x + (toEye ? 2 : 15), face - 10, head: true, accent: true);
        }

        Ray(x, y, aim, toEye ? eye : face - 10, head: true, accent: true);
        if (spread)
            Dot(x, y, accent: true);
    }

    private void Dot(double x, double y, bool accent) =>
        paper.Solid(Invariant($"M{x - 3:0.##} {y:0.##}a3 3 0 1 0 6 0a3 3 0 1 0 -6 0Z"), accent);

    private static bool Ends(SectionBand band, double across) => band.Layer is null
        ? band.Stock.Light == SheetLight.Opaque
        : band.Layer is { Group: InkGroup.BlockOut, StrengthPercent: >= StackSight.StopsPercent } && band.HasInkAt(across);

    private static bool Spreads(SectionBand band, double across) => band.Layer is null
        ? band.Stock.Light == SheetLight.Opal
        : band.Layer.Group == InkGroup.White && band.HasInkAt(across);

    // The first thing that sends room light back, or takes it: how deep, and whether it returns. Without any, the wall behind does.
    private (double Depth, bool Returned) Returned(double outward)
    {
        foreach (SectionBand band in outward < 0 ? bands : bands.Reverse())
        {
            bool sheet = band.Layer is null && band.Stock.Light != SheetLight.Clear;
            double middle = (band.Top + band.Bottom) / 2;
            if (sheet || (band.Layer?.Group == InkGroup.White && band.HasInkAt(Turn)))
                return (sheet && band.Stock.Light == SheetLight.Opaque ? (outward < 0 ? band.Top : band.Bottom) : middle, !sheet || band.Stock.ReflectancePercent >= StackSight.BlackSheetPercent);
            if (band.Layer is { Group: InkGroup.BlockOut, StrengthPercent: >= StackSight.StopsPercent } && band.HasInkAt(Turn))
                return (outward < 0 ? band.Top - 5 : band.Bottom + 5, false);
        }

        return outward < 0 ? (bands[^1].Bottom + 8, true) : (bands[0].Top - 8, true);
    }

    private void Ray(double x1, double y1, double x2, double y2, bool head, bool accent)
    {
        paper.Halo(Invariant($"M{x1:0.##} {y1:0.##}L{x2:0.##} {y2:0.##}"));
        if (head)
            Sizing.Arrow(paper, x1, y1, x2, y2, accent);
        else
            paper.Line(x1, y1, x2, y2, accent ? Pen.Accent : Pen.Edge);
    }

    // A bar across the ray: here it ends.
    private void Stop(double x, double y)
    {
        paper.Halo(Invariant($"M{x - 9:0.##} {y:0.##}h18"));
        paper.Path(Invariant($"M{x - 9:0.##} {y - 1.2:0.##}h18m0 2.4h-18"), Pen.Edge);
    }

    private void Rays(double x, double y)
    {
        paper.Path(Invariant($"M{x - 5:0.##} {y:0.##}a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z"), Pen.Edge, onPaper: true);
        for (int i = 0; i < 8; i++)
        {
            double sin = Math.Sin(i * Math.PI / 4), cos = Math.Cos(i * Math.PI / 4);
            paper.Line(x + (7.5 * cos), y + (7.5 * sin), x + (11 * cos), y + (11 * sin), Pen.Edge);
        }
    }
}
