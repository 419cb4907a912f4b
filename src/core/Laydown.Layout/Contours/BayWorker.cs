using Laydown.Layout.Packing;

namespace Laydown.Layout.Contours;

/// <summary>One worker of the search: its field, its chance, and the attempt it is at. The last bay is the open one, whose length is to shrink.</summary>
internal sealed class BayWorker(Field field, Chance chance)
{
    internal Field Field { get; } = field;

    internal Chance Chance { get; } = chance;

    internal Separator Separator { get; } = new(field, chance);

    internal BayAttempt Attempt { get; set; }

    /// <summary>Right end of the open bay the attempt is made at.</summary>
    internal float Target { get; set; }

    internal bool IsDone => Attempt == BayAttempt.None || Separator.IsSolved || Separator.HasGivenUp;

    private int Open => Field.Bays.Length - 1;

    /// <summary>Some sweeps, fewer where the attempt ends or a stop is asked for.</summary>
    internal void Run(int sweeps, CancellationToken stop)
    {
        for (int s = 0; s < sweeps && !IsDone && !stop.IsCancellationRequested; s++)
            Separator.Sweep();
    }

    /// <summary>Begins with poses squeezed to a shorter open bay: what lies right of a cut moves left, what no longer fits goes anywhere.</summary>
    internal void Squeeze(BayAttempt attempt, ReadOnlySpan<Pose> poses, float right, float target)
    {
        Bay bay = Shorten(target);
        float cut = bay.Left + ((right - bay.Left) * (float)Chance.Share());
        for (int i = 0; i < Field.Movable; i++)
        {
            float x = poses[i].Bay == Open && poses[i].X > cut ? poses[i].X - (right - target) : poses[i].X;
            Field.Put(i, Inside(i, poses[i] with { X = x }));
        }

        Begin(attempt, target);
    }

    /// <summary>Begins with the given poses; forms without one go anywhere.</summary>
    internal void Spread(IReadOnlyList<Pose?> poses)
    {
        for (int i = 0; i < Field.Movable; i++)
            Field.Put(i, poses[i] is { } pose ? Inside(i, pose) : Separator.Placer.Somewhere(i));
        Begin(BayAttempt.Explore, Field.Bays[Open].Right);
    }

    /// <summary>Begins with overlapping poses in which two large forms change places.</summary>
    internal void Disrupt(ReadOnlySpan<Pose> poses, int[] large, float target)
    {
        Shorten(target);
        for (int i = 0; i < Field.Movable; i++)
            Field.Put(i, Inside(i, poses[i]));

        int one = large[Chance.Below(large.Length)], other = one;
        for (int tries = 0; tries < 20 && Field.Form(other).Index == Field.Form(one).Index; tries++)
            other = large[Chance.Below(large.Length)];
        (Pose a, Pose b) = (Field.Poses[one], Field.Poses[other]);
        Field.Put(one, Inside(one, b with { Angle = a.Angle }));
        Field.Put(other, Inside(other, a with { Angle = b.Angle }));
        Begin(BayAttempt.Explore, target);
    }

    private Bay Shorten(float target) => Field.Bays[Open] = Field.Bays[Open] with { Right = target };

    private void Begin(BayAttempt attempt, float target)
    {
        (Attempt, Target) = (attempt, target);
        (Separator.MostIdle, Separator.MostStrikes) = attempt == BayAttempt.Compress ? (100, 3) : (200, 3);
        Field.CountAll();
        Separator.Start();
    }

    private Pose Inside(int i, Pose pose)
    {
        Turned form = Field.Form(i).At(pose.Angle);
        Bay bay = Field.Bays[pose.Bay];
        return bay.Takes(form)
            ? pose with { X = bay.ClampX(form, pose.X), Y = bay.ClampY(form, pose.Y) }
            : Separator.Placer.Somewhere(i);
    }
}
