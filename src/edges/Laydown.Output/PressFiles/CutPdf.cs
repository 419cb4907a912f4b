using System.Globalization;
using Laydown.Formats.PdfWriting;
using Laydown.Measures;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Cut paths of a sheet as PDF at full size: each way of cutting a layer and a separation of its own, named as in [ISO19593-1].</summary>
/// <remarks>The page is the sheet, in units of up to 75 000/72 inch where it is longer than 5.08 m. The same lines as <see cref="CutDrawing"/>.</remarks>
internal static class CutPdf
{
    private const double LineMm = 0.25, MostMm = 14_400 * 25.4 / 72;

    /// <summary>The file of one sheet.</summary>
    /// <param name="context">The run.</param>
    /// <param name="number">Sheet from 0.</param>
    public static byte[] Bytes(RunContext context, int number)
    {
        SizeMm sheet = context.Run.Sheets[number].Sheet;
        IReadOnlyList<CutShape> shapes = CutDrawing.Shapes(context, number);
        using MemoryStream stream = new();
        PdfFile file = new(stream, Invariant($"Cut paths, run {context.Run.Id}, sheet {number + 1}"), PlannedOn(context), null);
        double unit = Math.Max(1, Math.Ceiling(Math.Max(sheet.WidthMm, sheet.HeightMm) / MostMm));
        file.AddPage(new(sheet, new RectMm(0, 0, sheet.WidthMm, sheet.HeightMm), null, unit), canvas =>
        {
            foreach (string step in CutDrawing.Steps.Where(s => shapes.Any(c => c.Step == s)))
                canvas.On(LayerOf(step), () => canvas.Apart(() => Draw(canvas, step, shapes)));
        });
        file.Close();
        return stream.ToArray();
    }

    private static void Draw(PdfCanvas canvas, string step, IReadOnlyList<CutShape> shapes)
    {
        canvas.Overprint(true);
        canvas.LineWidth(LineMm);
        canvas.StrokeSpot(new(step, step == "Drilling" ? 0.9 : 0.1, step == "Cutting" ? 0.75 : 0.3, step is "Folding" or "Creasing" ? 0.9 : 0, 0), 1);
        foreach (CutShape shape in shapes.Where(s => s.Step == step))
            Trace(canvas, shape);
    }

    private static void Trace(PdfCanvas canvas, CutShape shape)
    {
        double x = shape.Points[0].XMm, y = shape.Points[0].YMm;
        if (shape.DiameterMm > 0)
        {
            Circle(canvas, x, y, shape.DiameterMm / 2);
        }
        else if (shape.Points.Count == 1)
        {
            canvas.MoveTo(x - CutShape.CrossMm, y);
            canvas.LineTo(x + CutShape.CrossMm, y);
            canvas.MoveTo(x, y - CutShape.CrossMm);
            canvas.LineTo(x, y + CutShape.CrossMm);
        }
        else
        {
            canvas.MoveTo(x, y);
            foreach (PointMm point in shape.Points.Skip(1))
                canvas.LineTo(point.XMm, point.YMm);
            if (shape.Closed)
                canvas.ClosePath();
        }

        canvas.Stroke();
    }

    // Four curves; 0.5523 of the radius brings them within three tenths of a thousandth of it.
    private static void Circle(PdfCanvas canvas, double x, double y, double r)
    {
        double k = 0.5522847 * r;
        canvas.MoveTo(x + r, y);
        canvas.CurveTo(x + r, y + k, x + k, y + r, x, y + r);
        canvas.CurveTo(x - k, y + r, x - r, y + k, x - r, y);
        canvas.CurveTo(x - r, y - k, x - k, y - r, x, y - r);
        canvas.CurveTo(x + k, y - r, x + r, y - k, x + r, y);
        canvas.ClosePath();
    }

    private static PdfLayer LayerOf(string step) =>
        step == CutShape.Register ? new(step, null, null, Visible: true) : new(step, "Structural", step, Visible: true);

    // The same run gives the same bytes: the day it was planned on stands in its id.
    private static DateTimeOffset PlannedOn(RunContext context)
    {
        string id = context.Run.Id;
        bool dated = id.Length >= 10 && DateOnly.TryParseExact(id.AsSpan(2, 8), "yyyyMMdd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly _);
        DateOnly day = dated ? DateOnly.ParseExact(id.AsSpan(2, 8), "yyyyMMdd", CultureInfo.InvariantCulture) : context.Run.Due;
        return new(day.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero);
    }
}
