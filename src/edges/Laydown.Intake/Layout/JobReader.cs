using Laydown.Formats.Dxf;
using Laydown.Formats.Json;
using Laydown.Formats.Svg;
using Laydown.Geometry.Outlines;
using Laydown.Geometry.Shapes;
using Laydown.Layout.Jobs;
using Laydown.Measures;
using Laydown.Shop.Layout;

namespace Laydown.Intake.Layout;

/// <inheritdoc/>
public sealed class JobReader : IJobReader
{
    private static readonly OutlineRules Rules = new();

    /// <inheritdoc/>
    public Reading<JobRead> Job(string path) => LaydownJson.ReadFile<LayoutJob>(path).Then(job => new Resolving(path).Of(job));

    /// <inheritdoc/>
    public Reading<JobLayout> Layout(string path) => LaydownJson.ReadFile<JobLayout>(path).Then(layout =>
    {
        IReadOnlyList<InputFault> faults = [.. JobDemands.Faults(layout.Job).Select(f => Fault(Path.GetFileName(path), "/job" + f.Field, f))];
        if (faults.Count > 0)
            return Reading.Refused<JobLayout>(faults);
        try
        {
            _ = new JobShapes(layout.Job);
            return Reading.Of(layout);
        }
        catch (ArgumentException unsound)
        {
            return Reading.Refused<JobLayout>(new InputFault(Path.GetFileName(path), null, "/job", unsound.Message, "sound contours as corners"));
        }
    });

    /// <inheritdoc/>
    public Reading<MendedOutlines> Contours(string path)
    {
        string name = Path.GetFileName(path);
        try
        {
            using FileStream stream = File.OpenRead(path);
            return Path.GetExtension(path).ToLowerInvariant() switch
            {
                ".dxf" => DxfReader.Read(name, stream, new DxfLimits()).Then(d => Mended(name, d.Contours, d.Findings)),
                ".svg" => SvgContours.Read(name, stream).Then(d => Mended(name, d.Contours, d.Findings)),
                string other => Reading.Refused<MendedOutlines>(new InputFault(name, null, "file", other.Length > 0 ? other : "no ending", "a .dxf or .svg file")),
            };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Reading.Refused<MendedOutlines>(new InputFault(name, null, "file", "nothing that can be opened", "a readable DXF or SVG file"));
        }
    }

    private static Reading<MendedOutlines> Mended(string name, IReadOnlyList<RawContour> contours, IReadOnlyList<Finding> before) =>
        OutlineMending.Nested(name, contours, Rules).Then(m => Reading.Of(m with { Findings = [.. before, .. m.Findings] }));

    private static InputFault Fault(string file, string field, JobFault fault) => new(file, null, field, fault.Found, fault.Wanted);

    // Brings every contour of a job to corners.
    private sealed class Resolving(string path)
    {
        private readonly string file = Path.GetFileName(path);
        private readonly List<JobFinding> findings = [];
        private readonly List<InputFault> faults = [];

        internal Reading<JobRead> Of(LayoutJob job)
        {
            List<JobPiece> pieces = [];
            for (int i = 0; i < job.Pieces.Count; i++)
                pieces.AddRange(Pieces(job.Pieces[i], i));
            JobStock[] stocks = [.. job.Stocks.Select(Stock)];
            LayoutJob whole = job with { Pieces = pieces, Stocks = stocks };
            if (faults.Count == 0)
                faults.AddRange(JobDemands.Faults(whole).Select(f => Fault(file, f.Field, f)));
            return faults.Count > 0 ? Reading.Refused<JobRead>([.. faults.Take(50)]) : Reading.Of(new JobRead(whole, findings));
        }

        // Further shapes of a file become further pieces, as many of each.
        private IEnumerable<JobPiece> Pieces(JobPiece piece, int number)
        {
            if (piece.Contour is not { } contour)
                return [piece];
            IReadOnlyList<MendedShape> shapes = Shapes(contour, Invariant($"/pieces/{number}/contour"));
            return shapes.Select((s, i) => piece with { Id = i == 0 ? piece.Id : Invariant($"{piece.Id}/{i + 1}"), Contour = Corners(s.Area) });
        }

        private JobStock Stock(JobStock stock, int number)
        {
            if (stock.Contour is not { } contour)
                return stock;
            IReadOnlyList<MendedShape> shapes = Shapes(contour, Invariant($"/stocks/{number}/contour"));
            if (shapes.Count > 1)
                faults.Add(new(file, null, Invariant($"/stocks/{number}/contour"), Invariant($"{shapes.Count} shapes"), "one shape"));
            RectMm whole = new(0, 0, stock.WidthMm, stock.HeightMm);
            if (shapes.Count == 1 && !whole.Holds(shapes[0].Area.Bounds, 0.01))
                faults.Add(new(file, null, Invariant($"/stocks/{number}/contour"), Invariant($"a shape over {shapes[0].Area.Bounds}"), Invariant($"within 0, 0 to {stock.WidthMm}, {stock.HeightMm} mm")));
            return shapes.Count == 1 ? stock with { Contour = Corners(shapes[0].Area) } : stock;
        }

        private IReadOnlyList<MendedShape> Shapes(JobContour contour, string field)
        {
            (string from, Reading<MendedOutlines> read) = (contour.OuterMm, contour.Path, contour.File) switch
            {
                ({ } outer, null, null) => (file, Rings(outer, contour.HolesMm ?? [], field)),
                (null, { } data, null) when contour.HolesMm is null => (file, SvgContours.Path(file, field + "/path", data).Then(c => Mended(file, c, []))),
                (null, null, { } name) when contour.HolesMm is null => (name, new JobReader().Contours(Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path)) ?? "", Path.GetFileName(name)))),
                _ => (file, Reading.Refused<MendedOutlines>(new InputFault(file, null, field, "none or several of outerMm, path, file", "exactly one of them; holesMm only with outerMm"))),
            };
            if (!read.IsTaken)
            {
                faults.AddRange(read.Faults);
                return [];
            }

            findings.AddRange(read.Value.Findings.Select(f => new JobFinding(from, f)));
            return read.Value.Shapes;
        }

        private Reading<MendedOutlines> Rings(IReadOnlyList<double> outer, IReadOnlyList<IReadOnlyList<double>> holes, string field)
        {
            (string Field, IReadOnlyList<double> Xy)[] rings = [(field + "/outerMm", outer), .. holes.Select((h, i) => (Invariant($"{field}/holesMm/{i}"), h))];
            InputFault[] odd = [.. rings.Where(r => r.Xy.Count % 2 != 0).Select(r => new InputFault(file, null, r.Field, Invariant($"{r.Xy.Count} numbers"), "x, y, x, y …: an even number"))];
            RawContour[] raw = [.. rings.Select(r => new RawContour(r.Field, [.. Enumerable.Range(0, r.Xy.Count / 2).Select(i => new PointMm(r.Xy[2 * i], r.Xy[(2 * i) + 1]))], true))];
            return odd.Length > 0 ? Reading.Refused<MendedOutlines>(odd) : OutlineMending.WithHoles(file, raw[0], [.. raw.Skip(1)], Rules);
        }

        private static JobContour Corners(Shape area) => new(Flat(area.OuterRings()[0]), [.. area.Holes().Select(Flat)]);

        private static IReadOnlyList<double> Flat(Outline ring) => [.. ring.Points.SelectMany(p => (double[])[p.XMm, p.YMm])];
    }
}
