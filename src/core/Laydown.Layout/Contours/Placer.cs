using Laydown.Layout.Packing;

namespace Laydown.Layout.Contours;

/// <summary>Looks for a better place for one form: places by chance, near and far, the best of them refined by ever smaller steps. [Gardeyn2025]</summary>
internal sealed class Placer
{
    private const int Kept = 3;

    private readonly Field field;
    private readonly Chance chance;
    private readonly int[][] angles;
    private readonly float[] bayShare;
    private readonly (float Cost, Pose Pose)[] kept = new (float, Pose)[Kept];
    private int keptCount;
    private bool filling;

    internal Placer(Field field, Chance chance)
    {
        (this.field, this.chance) = (field, chance);
        angles = [.. Enumerable.Range(0, field.Movable).Select(i => AnglesThatFit(field, i))];
        bayShare = new float[field.Bays.Length];
    }

    /// <summary>Places tried in the whole of the bays, and near where the form lies.</summary>
    internal int Far { get; set; } = 50;

    /// <summary>See <see cref="Far"/>.</summary>
    internal int Near { get; set; } = 25;

    /// <summary>Whether the form fits any bay at any of its angles.</summary>
    internal bool Fits(int i) => angles[i].Length > 0;

    /// <summary>An angle the form may take.</summary>
    internal int AnyAngle(int i) => angles[i][chance.Below(angles[i].Length)];

    /// <summary>A place of chance at which the form fits.</summary>
    internal Pose Somewhere(int i)
    {
        for (int tries = 0; tries < 1000; tries++)
        {
            if (Anywhere(i) is { } pose)
                return pose;
        }

        return field.Poses[i];
    }

    /// <summary>Moves the form to where its weighted loss is less, if such a place is found.</summary>
    internal bool Improve(int i)
    {
        filling = false;
        keptCount = 0;
        float now = field.WeightedLoss(i);
        Pose pose = field.Poses[i];
        Keep(now, pose, 0);
        float apart = Math.Min(field.At(i).Width, field.At(i).Height) * 0.01f;
        for (int n = 0; n < Near; n++)
            Try(i, NearTo(i, pose), apart);
        for (int n = 0; n < Far; n++)
            Try(i, Anywhere(i), apart);
        (float cost, Pose best) = RefineKept(i, apart);
        if (!(cost < now))
            return false;
        field.Move(i, best);
        return true;
    }

    /// <summary>A free place as far to the left as can be found in a bay; null where none was found.</summary>
    internal Pose? Leftmost(int i, int bay, int tries)
    {
        filling = true;
        keptCount = 0;
        float most = float.MaxValue;
        Bay room = field.Bays[bay];
        for (int n = 0; n < tries; n++)
        {
            int angle = angles[i][chance.Below(angles[i].Length)];
            Turned form = field.Form(i).At(angle);
            float right = Math.Min(room.Right, most) - form.MaxX;
            if (!room.Takes(form) || (right < room.Left - form.MinX && keptCount > 0))
                continue;
            right = Math.Max(right, room.Left - form.MinX);
            Pose pose = new(bay, angle, Between(room.Left - form.MinX, right), Between(room.Bottom - form.MinY, room.Top - form.MaxY));
            float cost = Cost(i, form, pose, keptCount > 0 ? kept[0].Cost : float.MaxValue);
            if (cost < float.MaxValue && (keptCount == 0 || cost < kept[0].Cost))
                (kept[0], keptCount, most) = ((cost, pose), 1, pose.X + form.MaxX);
        }

        if (keptCount == 0)
            return null;
        float side = Math.Min(field.Form(i).At(kept[0].Pose.Angle).Width, field.Form(i).At(kept[0].Pose.Angle).Height);
        return Refine(i, kept[0].Cost, kept[0].Pose, side * 0.25f, side * 0.001f).Pose;
    }

    private static int[] AnglesThatFit(Field field, int i) =>
        [.. Enumerable.Range(0, field.Form(i).Degrees.Count).Where(a => field.Bays.Any(b => b.Takes(field.Form(i).At(a))))];

    private void Try(int i, Pose? pose, float apart)
    {
        if (pose is not { } at)
            return;
        float cost = Cost(i, field.Form(i).At(at.Angle), at, keptCount < Kept ? float.MaxValue : kept[Kept - 1].Cost);
        if (keptCount < Kept || cost < kept[keptCount - 1].Cost)
            Keep(cost, at, apart);
    }

    /// <summary>Keeps the best places, of those close to each other only the better.</summary>
    private void Keep(float cost, Pose pose, float apart)
    {
        int at = keptCount;
        for (int k = 0; k < keptCount; k++)
        {
            Pose other = kept[k].Pose;
            if (other.Angle == pose.Angle && Math.Abs(other.X - pose.X) < apart && Math.Abs(other.Y - pose.Y) < apart)
            {
                if (kept[k].Cost <= cost)
                    return;
                at = k;
                break;
            }
        }

        if (at == keptCount)
        {
            if (keptCount < Kept)
                keptCount++;
            else
                at = Kept - 1;
        }

        kept[at] = (cost, pose);
        for (; at > 0 && kept[at].Cost < kept[at - 1].Cost; at--)
            (kept[at], kept[at - 1]) = (kept[at - 1], kept[at]);
    }

    private (float Cost, Pose Pose) RefineKept(int i, float hundredth)
    {
        (float Cost, Pose Pose) best = kept[0];
        for (int k = 0; k < keptCount; k++)
        {
            (float Cost, Pose Pose) refined = Refine(i, kept[k].Cost, kept[k].Pose, hundredth * 25, hundredth * 2);
            if (refined.Cost < best.Cost)
                best = refined;
        }

        return Refine(i, best.Cost, best.Pose, hundredth, hundredth * 0.1f);
    }

    /// <summary>Steps along an axis, a diagonal or round, both ways; a step that helps grows, one that does not halves.</summary>
    private (float Cost, Pose Pose) Refine(int i, float cost, Pose pose, float step, float least)
    {
        float x = step, y = step;
        int turns = field.Form(i).Degrees.Count;
        float round = turns > 8 ? Math.Clamp(turns * step / field.Form(i).Reach * 0.3f, 1, turns / 8f) : 0;
        while ((x > least || y > least) && cost > 0)
        {
            int way = chance.Below(round > 0 ? 5 : 4);
            (float dx, float dy, int da) = way switch { 0 => (x, 0, 0), 1 => (0f, y, 0), 2 => (x, y, 0), 3 => (x, -y, 0), _ => (0f, 0f, (int)round) };
            (float Cost, Pose Pose) one = Stepped(i, pose, dx, dy, da, cost);
            (float Cost, Pose Pose) other = Stepped(i, pose, -dx, -dy, -da, Math.Min(cost, one.Cost));
            if (other.Cost < one.Cost)
                one = other;
            bool better = one.Cost < cost;
            if (better)
                (cost, pose) = one;
            float factor = better ? 1.1f : way < 2 ? 0.5f : 0.70710678f;
            (x, y) = (way != 1 && way < 4 ? x * factor : x, way != 0 && way < 4 ? y * factor : y);
            if (way == 4)
                round = better || round <= 1 ? round : round * 0.5f;
            if (way == 4 && !better)
                (x, y) = (x * 0.84f, y * 0.84f);
        }

        return (cost, pose);
    }

    private (float Cost, Pose Pose) Stepped(int i, Pose pose, float dx, float dy, int da, float limit)
    {
        int turns = field.Form(i).Degrees.Count, angle = (pose.Angle + da + turns) % turns;
        Turned form = field.Form(i).At(angle);
        Bay bay = field.Bays[pose.Bay];
        if (!bay.Takes(form))
            return (float.MaxValue, pose);
        Pose next = new(pose.Bay, angle, bay.ClampX(form, pose.X + dx), bay.ClampY(form, pose.Y + dy));
        return next == pose ? (float.MaxValue, pose) : (Cost(i, form, next, limit), next);
    }

    private float Cost(int i, Turned form, Pose pose, float limit)
    {
        if (!filling)
            return field.Evaluate(i, form, pose, limit);
        float cost = pose.X + form.MaxX + (0.03f * (pose.Y + form.MaxY)) + 1e-3f;
        return cost < limit && field.Evaluate(i, form, pose, float.Epsilon) == 0 ? cost : float.MaxValue;
    }

    private Pose? NearTo(int i, Pose pose)
    {
        Turned form = field.At(i);
        int angle = angles[i].Length > 8 && chance.Below(4) > 0
            ? (pose.Angle + chance.Below(9) - 4 + field.Form(i).Degrees.Count) % field.Form(i).Degrees.Count
            : AnyAngle(i);
        Turned next = field.Form(i).At(angle);
        Bay bay = field.Bays[pose.Bay];
        return bay.Takes(next)
            ? new(pose.Bay, angle,
                bay.ClampX(next, pose.X + Between(-form.Width * 0.5f, form.Width * 0.5f)), bay.ClampY(next, pose.Y + Between(-form.Height * 0.5f, form.Height * 0.5f)))
            : null;
    }

    private Pose? Anywhere(int i)
    {
        int angle = AnyAngle(i), bay = AnyBay();
        Turned form = field.Form(i).At(angle);
        Bay room = field.Bays[bay];
        return room.Takes(form)
            ? new(bay, angle, Between(room.Left - form.MinX, room.Right - form.MaxX), Between(room.Bottom - form.MinY, room.Top - form.MaxY))
            : null;
    }

    private int AnyBay()
    {
        if (field.Bays.Length == 1)
            return 0;
        float sum = 0;
        for (int b = 0; b < bayShare.Length; b++)
            bayShare[b] = sum += field.Bays[b].Area;
        float at = (float)chance.Share() * sum;
        int bay = 0;
        while (bay < bayShare.Length - 1 && bayShare[bay] < at)
            bay++;
        return bay;
    }

    private float Between(float low, float high) => low + ((float)chance.Share() * (high - low));
}
