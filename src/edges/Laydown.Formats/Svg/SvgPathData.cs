using System.Globalization;
using Laydown.Geometry.Outlines;
using Laydown.Measures;

namespace Laydown.Formats.Svg;

/// <summary>Reads path data as SVG writes it: all commands, absolute and relative, curves flattened. [SVG11]</summary>
/// <param name="data">The data.</param>
/// <param name="tolerance">How far flattened curves may lie off, in units of the data.</param>
internal sealed class SvgPathData(string data, double tolerance)
{
    private readonly List<(List<PointMm> Points, bool Closed)> parts = [];
    private int at;
    private PointMm pen, start, handle;
    private char last;

    /// <summary>The lines, each with whether it is closed, or null with the place where the data cannot be read.</summary>
    internal (IReadOnlyList<(List<PointMm> Points, bool Closed)>? Parts, int At) Read()
    {
        char command = '\0';
        while (Skip())
        {
            char c = data[at];
            if (char.IsAsciiLetter(c))
            {
                command = c;
                at++;
            }
            else if (command is '\0' or 'Z' or 'z')
            {
                return (null, at);
            }

            // More pairs behind a move are lines.
            if (!Step(command))
                return (null, at);
            command = command switch { 'M' => 'L', 'm' => 'l', _ => command };
        }

        return (parts, at);
    }

    private bool Step(char command)
    {
        bool relative = char.IsAsciiLetterLower(command);
        bool done = char.ToUpperInvariant(command) switch
        {
            'M' => Place(relative) is { } p && Move(p),
            'L' => Place(relative) is { } p && Line(p),
            'H' => Number() is { } x && Line(new(relative ? pen.XMm + x : x, pen.YMm)),
            'V' => Number() is { } y && Line(new(pen.XMm, relative ? pen.YMm + y : y)),
            'C' => Place(relative) is { } a && Place(relative) is { } b && Place(relative) is { } p && Cubic(a, b, p),
            'S' => Place(relative) is { } b && Place(relative) is { } p && Cubic(Mirrored("CS"), b, p),
            'Q' => Place(relative) is { } a && Place(relative) is { } p && Quadratic(a, p),
            'T' => Place(relative) is { } p && Quadratic(Mirrored("QT"), p),
            'A' => Arc(relative),
            'Z' => Close(),
            _ => false,
        };
        last = char.ToUpperInvariant(command);
        return done && double.IsFinite(pen.XMm) && double.IsFinite(pen.YMm);
    }

    private PointMm Mirrored(string after) =>
        after.Contains(last, StringComparison.Ordinal) ? new((2 * pen.XMm) - handle.XMm, (2 * pen.YMm) - handle.YMm) : pen;

    private bool Move(PointMm to)
    {
        parts.Add(([to], false));
        pen = start = to;
        return true;
    }

    private bool Line(PointMm to) => Add([to]);

    private bool Cubic(PointMm a, PointMm b, PointMm to)
    {
        bool added = Add(Curves.Cubic(pen, a, b, to, tolerance));
        handle = b;
        return added;
    }

    private bool Quadratic(PointMm a, PointMm to)
    {
        bool added = Add(Curves.Quadratic(pen, a, to, tolerance));
        handle = a;
        return added;
    }

    private bool Close()
    {
        if (parts.Count == 0)
            return false;
        parts[^1] = (parts[^1].Points, true);
        pen = start;
        return true;
    }

    private bool Add(IReadOnlyList<PointMm> points)
    {
        if (parts.Count == 0)
            return false;

        // What goes on after a close begins a new line at the same place.
        if (parts[^1].Closed)
            parts.Add(([start], false));
        parts[^1].Points.AddRange(points);
        pen = points[^1];
        return true;
    }

    private bool Arc(bool relative)
    {
        if (Number() is not { } rx || Number() is not { } ry || Number() is not { } turn || Flag() is not { } large || Flag() is not { } sweep || Place(relative) is not { } to)
            return false;
        (rx, ry) = (Math.Abs(rx), Math.Abs(ry));
        if (to == pen)
            return true;
        return rx == 0 || ry == 0 ? Line(to) : Add(SvgArc.Points(pen, to, rx, ry, turn, large, sweep, tolerance));
    }

    private PointMm? Place(bool relative) =>
        Number() is { } x && Number() is { } y ? new(relative ? pen.XMm + x : x, relative ? pen.YMm + y : y) : null;

    private bool Skip()
    {
        while (at < data.Length && (char.IsWhiteSpace(data[at]) || data[at] == ','))
            at++;
        return at < data.Length;
    }

    private bool? Flag()
    {
        bool? flag = Skip() && data[at] is '0' or '1' ? data[at] == '1' : null;
        at += flag is null ? 0 : 1;
        return flag;
    }

    private double? Number()
    {
        if (!Skip())
            return null;
        int from = at;
        if (data[at] is '+' or '-')
            at++;
        Digits();
        if (at < data.Length && data[at] == '.')
        {
            at++;
            Digits();
        }

        if (at < data.Length && data[at] is 'e' or 'E' && at > from)
        {
            int mark = at++;
            if (at < data.Length && data[at] is '+' or '-')
                at++;
            if (at >= data.Length || !char.IsAsciiDigit(data[at]))
                at = mark;
            Digits();
        }

        return double.TryParse(data.AsSpan(from, at - from), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;
    }

    private void Digits()
    {
        while (at < data.Length && char.IsAsciiDigit(data[at]))
            at++;
    }
}
