using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>A form at one angle about its own centre: sides and circles as arrays that eight lanes read at once.</summary>
internal sealed class Turned
{
    internal const int Lanes = 8;

    internal Turned(Form form, int angle, double degrees)
    {
        Form = form;
        Angle = angle;
        Quarter = degrees % 90 == 0 ? (int)(degrees / 90) % 4 : -1;
        (double sin, double cos) = SinCos(degrees);
        PointMm[][] rings = [.. form.Rings.Select(r => r.Select(p => new PointMm((cos * p.XMm) - (sin * p.YMm), (sin * p.XMm) + (cos * p.YMm))).ToArray())];
        int sides = Padded(rings.Sum(r => r.Length)), poles = Padded(form.Poles.Count);
        (X, Y, U, V) = (new float[sides], new float[sides], new float[sides], new float[sides]);
        (PoleX, PoleY, PoleR) = (new float[poles], new float[poles], new float[poles]);
        (Sides, Starts) = (rings.Sum(r => r.Length), new int[rings.Length]);
        FillSides(rings);
        Array.Fill(PoleX, 1e9f);
        for (int i = 0; i < form.Poles.Count; i++)
        {
            PoleX[i] = (float)((cos * form.Poles[i].X) - (sin * form.Poles[i].Y));
            PoleY[i] = (float)((sin * form.Poles[i].X) + (cos * form.Poles[i].Y));
            PoleR[i] = (float)form.Poles[i].Radius;
        }

        // The box is that of the shape grown by the slack on all sides; sharp corners themselves grow less.
        PointMm[] bare = [.. form.Bare.Select(p => new PointMm((cos * p.XMm) - (sin * p.YMm), (sin * p.XMm) + (cos * p.YMm)))];
        (MinX, MaxX) = ((float)(bare.Min(p => p.XMm) - form.GrownBy), (float)(bare.Max(p => p.XMm) + form.GrownBy));
        (MinY, MaxY) = ((float)(bare.Min(p => p.YMm) - form.GrownBy), (float)(bare.Max(p => p.YMm) + form.GrownBy));
    }

    internal Form Form { get; }

    /// <summary>Which of the form's angles; −1 for one that only a table asks for.</summary>
    internal int Angle { get; }

    /// <summary>Quarter turns, 0 to 3; −1 at any other angle.</summary>
    internal int Quarter { get; }

    /// <summary>Where each side starts, and where it goes; slots after the last are NaN, which hits nothing.</summary>
    internal float[] X { get; }

    internal float[] Y { get; }

    internal float[] U { get; }

    internal float[] V { get; }

    internal int Sides { get; }

    /// <summary>The first side of each ring.</summary>
    internal int[] Starts { get; }

    internal float[] PoleX { get; }

    internal float[] PoleY { get; }

    internal float[] PoleR { get; }

    internal float MinX { get; }

    internal float MinY { get; }

    internal float MaxX { get; }

    internal float MaxY { get; }

    internal float Width => MaxX - MinX;

    internal float Height => MaxY - MinY;

    /// <summary>Sine and cosine, exact at quarter turns.</summary>
    internal static (double Sin, double Cos) SinCos(double degrees) => degrees switch
    {
        0 => (0, 1),
        90 => (1, 0),
        180 => (0, -1),
        270 => (-1, 0),
        _ => Math.SinCos(degrees * Math.PI / 180),
    };

    /// <summary>Whether a point lies in the material.</summary>
    internal bool Holds(float x, float y)
    {
        bool inside = false;
        for (int i = 0; i < Sides; i++)
        {
            float y0 = Y[i], y1 = Y[i] + V[i];
            if ((y0 > y) != (y1 > y) && x < (U[i] * (y - y0) / V[i]) + X[i])
                inside = !inside;
        }

        return inside;
    }

    private static int Padded(int count) => (count + Lanes - 1) / Lanes * Lanes;

    private void FillSides(PointMm[][] rings)
    {
        int at = 0;
        for (int r = 0; r < rings.Length; r++)
        {
            Starts[r] = at;
            for (int i = 0; i < rings[r].Length; i++, at++)
            {
                PointMm a = rings[r][i], b = rings[r][(i + 1) % rings[r].Length];
                (X[at], Y[at]) = ((float)a.XMm, (float)a.YMm);
                (U[at], V[at]) = ((float)b.XMm - X[at], (float)b.YMm - Y[at]);
            }
        }

        for (; at < X.Length; at++)
            X[at] = Y[at] = U[at] = V[at] = float.NaN;
    }
}
