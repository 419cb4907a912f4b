using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Laydown.Layout.Contours;

/// <summary>Forms with their poses, which may overlap, and how much each pair does; one for each worker.</summary>
/// <remarks>Each bay has coordinates of its own. The forms after the first <see cref="Movable"/> are keep-outs and stay where they are.</remarks>
internal sealed class Field
{
    private readonly PairTables tables;
    private readonly Form[] forms;
    private readonly Turned[] turned;
    private readonly float[] left, bottom, right, top, bayOf, losses, weights, row;
    private readonly int[] hits;

    internal Field(PairTables tables, IReadOnlyList<Form> movable, IReadOnlyList<Form> fixedForms, IReadOnlyList<Pose> fixedPoses, IReadOnlyList<Bay> bays)
    {
        this.tables = tables;
        (forms, Movable, Bays) = ([.. movable, .. fixedForms], movable.Count, [.. bays]);
        Stride = (forms.Length + Turned.Lanes - 1) / Turned.Lanes * Turned.Lanes;
        (left, bottom, right, top, row) = (new float[Stride], new float[Stride], new float[Stride], new float[Stride], new float[Stride]);
        bayOf = new float[Stride];
        (losses, weights) = (new float[Stride * Stride], new float[Stride * Stride]);
        (turned, Poses, hits) = (new Turned[forms.Length], new Pose[forms.Length], new int[forms.Length]);
        Array.Fill(left, float.NaN);
        Array.Fill(weights, 1);
        for (int i = 0; i < fixedForms.Count; i++)
            Put(Movable + i, fixedPoses[i]);
    }

    /// <summary>How many forms can move.</summary>
    internal int Movable { get; }

    internal int Count => forms.Length;

    internal Bay[] Bays { get; }

    internal Pose[] Poses { get; }

    /// <summary>Length of a row of the tables of pairs.</summary>
    internal int Stride { get; }

    internal float[] Weights => weights;

    internal Form Form(int i) => forms[i];

    internal Turned At(int i) => turned[i];

    /// <summary>Whether a form overlaps any other.</summary>
    internal bool IsHit(int i) => hits[i] > 0;

    internal float Right(int i) => right[i];

    internal float Left(int i) => left[i];

    internal float PairLoss(int i, int j) => losses[(i * Stride) + j];

    /// <summary>Takes a form off the field: it overlaps nothing until it is put again.</summary>
    internal void Lift(int i) => left[i] = float.NaN;

    internal bool IsLifted(int i) => float.IsNaN(left[i]);

    /// <summary>Puts a form without counting what it overlaps.</summary>
    internal void Put(int i, Pose pose)
    {
        Turned form = forms[i].At(pose.Angle);
        (Poses[i], turned[i]) = (pose, form);
        (left[i], right[i]) = (pose.X + form.MinX, pose.X + form.MaxX);
        (bottom[i], top[i]) = (pose.Y + form.MinY, pose.Y + form.MaxY);
        bayOf[i] = pose.Bay;
    }

    /// <summary>Puts a form and counts what it overlaps.</summary>
    internal void Move(int i, Pose pose)
    {
        Put(i, pose);
        CountRow(i);
    }

    /// <summary>Counts all overlaps anew.</summary>
    internal void CountAll()
    {
        for (int i = 0; i < Movable; i++)
            CountRow(i);
    }

    /// <summary>Sum of the losses of all pairs; 0 where no two overlap.</summary>
    internal float TotalLoss()
    {
        float total = 0;
        for (int i = 0; i < Movable; i++)
        {
            for (int j = i + 1; hits[i] > 0 && j < forms.Length; j++)
                total += losses[(i * Stride) + j];
        }

        return total;
    }

    /// <summary>Weighted loss of one form where it lies.</summary>
    internal float WeightedLoss(int i)
    {
        ReadOnlySpan<float> loss = losses.AsSpan(i * Stride, forms.Length), weight = weights.AsSpan(i * Stride, forms.Length);
        float sum = 0;
        for (int j = 0; j < loss.Length; j++)
            sum += loss[j] * weight[j];
        return sum;
    }

    /// <summary>Weighted loss of one form if it lay elsewhere; no more than known to reach <paramref name="limit"/> is added up.</summary>
    internal float Evaluate(int i, Turned form, Pose pose, float limit)
    {
        (float x, float y) = (pose.X, pose.Y);
        Vector256<float> l = Vector256.Create(x + form.MinX), r = Vector256.Create(x + form.MaxX);
        Vector256<float> b = Vector256.Create(y + form.MinY), t = Vector256.Create(y + form.MaxY), bay = Vector256.Create((float)pose.Bay);
        ref float l0 = ref MemoryMarshal.GetArrayDataReference(left);
        ref float r0 = ref MemoryMarshal.GetArrayDataReference(right);
        ref float b0 = ref MemoryMarshal.GetArrayDataReference(bottom);
        ref float t0 = ref MemoryMarshal.GetArrayDataReference(top);
        ref float in0 = ref MemoryMarshal.GetArrayDataReference(bayOf);
        float sum = 0;
        for (int j = 0; j < Stride; j += Turned.Lanes)
        {
            uint near = (Vector256.LessThanOrEqual(Vector256.LoadUnsafe(ref l0, (nuint)j), r) & Vector256.GreaterThanOrEqual(Vector256.LoadUnsafe(ref r0, (nuint)j), l)
                & Vector256.LessThanOrEqual(Vector256.LoadUnsafe(ref b0, (nuint)j), t) & Vector256.GreaterThanOrEqual(Vector256.LoadUnsafe(ref t0, (nuint)j), b)
                & Vector256.Equals(Vector256.LoadUnsafe(ref in0, (nuint)j), bay))
                .ExtractMostSignificantBits();
            for (; near != 0; near &= near - 1)
            {
                int k = j + System.Numerics.BitOperations.TrailingZeroCount(near);
                if (k == i)
                    continue;
                float loss = tables.Loss(form, turned[k], x - Poses[k].X, y - Poses[k].Y);
                if (loss > 0 && (sum += loss * weights[(i * Stride) + k]) >= limit)
                    return sum;
            }
        }

        return sum;
    }

    /// <summary>Copies the poses of another field of the same forms and bays, and the bays.</summary>
    internal void Take(ReadOnlySpan<Pose> poses)
    {
        for (int i = 0; i < Movable; i++)
            Put(i, poses[i]);
        CountAll();
    }

    private void CountRow(int i)
    {
        Array.Clear(row);
        Turned form = turned[i];
        for (int j = 0; j < forms.Length; j++)
        {
            if (j != i && bayOf[j] == bayOf[i] && left[j] <= right[i] && right[j] >= left[i] && bottom[j] <= top[i] && top[j] >= bottom[i])
                row[j] = tables.Loss(form, turned[j], Poses[i].X - Poses[j].X, Poses[i].Y - Poses[j].Y);
        }

        for (int j = 0; j < forms.Length; j++)
        {
            int at = (i * Stride) + j, change = (row[j] > 0 ? 1 : 0) - (losses[at] > 0 ? 1 : 0);
            (hits[i], hits[j]) = (hits[i] + change, hits[j] + change);
            losses[at] = losses[(j * Stride) + i] = row[j];
        }
    }
}
