using Laydown.Layout.Packing;

namespace Laydown.Layout.Contours;

/// <summary>One worker of the strip search: its field, its chance, and the attempt it is at.</summary>
internal sealed class StripWorker(Field field, Chance chance)
{
    internal Field Field { get; } = field;

    internal Chance Chance { get; } = chance;

    internal Separator Separator { get; } = new(field, chance);

    internal StripAttempt Attempt { get; set; }

    /// <summary>Length the attempt is made at.</summary>
    internal float Target { get; set; }

    internal bool IsDone => Attempt == StripAttempt.None || Separator.IsSolved || Separator.HasGivenUp;

    /// <summary>Some sweeps, fewer where the attempt ends or a stop is asked for.</summary>
    internal void Run(int sweeps, CancellationToken stop)
    {
        for (int s = 0; s < sweeps && !IsDone && !stop.IsCancellationRequested; s++)
            Separator.Sweep();
    }

    /// <summary>Begins with poses squeezed to a shorter strip: what lies right of a cut moves left.</summary>
    internal void Squeeze(StripAttempt attempt, ReadOnlySpan<Pose> poses, float length, float target)
    {
        float cut = length * (float)Chance.Share();
        Bay bay = Field.Bays[0] = Field.Bays[0] with { Right = target };
        for (int i = 0; i < Field.Movable; i++)
        {
            Turned form = Field.Form(i).At(poses[i].Angle);
            float x = poses[i].X > cut ? poses[i].X - (length - target) : poses[i].X;
            Field.Put(i, poses[i] with { X = bay.ClampX(form, x), Y = bay.ClampY(form, poses[i].Y) });
        }

        Begin(attempt, target);
    }

    /// <summary>Begins with overlapping poses in which two large forms change places.</summary>
    internal void Disrupt(ReadOnlySpan<Pose> poses, int[] large, float target)
    {
        Bay bay = Field.Bays[0] = Field.Bays[0] with { Right = target };
        for (int i = 0; i < Field.Movable; i++)
            Field.Put(i, Inside(bay, i, poses[i]));

        int one = large[Chance.Below(large.Length)], other = one;
        for (int tries = 0; tries < 20 && Field.Form(other).Index == Field.Form(one).Index; tries++)
            other = large[Chance.Below(large.Length)];
        (Pose a, Pose b) = (Field.Poses[one], Field.Poses[other]);
        Field.Put(one, Inside(bay, one, a with { X = b.X, Y = b.Y }));
        Field.Put(other, Inside(bay, other, b with { X = a.X, Y = a.Y }));
        Begin(StripAttempt.Explore, target);
    }

    private void Begin(StripAttempt attempt, float target)
    {
        (Attempt, Target) = (attempt, target);
        (Separator.MostIdle, Separator.MostStrikes) = attempt == StripAttempt.Compress ? (100, 3) : (200, 3);
        Field.CountAll();
        Separator.Start();
    }

    private Pose Inside(Bay bay, int i, Pose pose)
    {
        Turned form = Field.Form(i).At(pose.Angle);
        return pose with { X = bay.ClampX(form, pose.X), Y = bay.ClampY(form, pose.Y) };
    }
}
