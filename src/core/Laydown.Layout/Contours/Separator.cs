using System.Runtime.Intrinsics;
using Laydown.Layout.Packing;

namespace Laydown.Layout.Contours;

/// <summary>Moves overlapping forms apart, one sweep at a time: pairs that stay in each other's way weigh more and more.</summary>
/// <remarks>Guided local search [Voudouris1999] as in [Gardeyn2025]; the weights of colliding pairs grow by their share of the worst, all others fade to 1.</remarks>
internal sealed class Separator
{
    private readonly Field field;
    private readonly Chance chance;
    private readonly Placer placer;
    private readonly int[] order;
    private readonly Pose[] best;
    private readonly float[] bestWeights;
    private float leastLoss, strikeLoss;
    private int idle, strikes;

    internal Separator(Field field, Chance chance)
    {
        (this.field, this.chance, placer) = (field, chance, new(field, chance));
        (order, best, bestWeights) = (new int[field.Movable], new Pose[field.Movable], new float[field.Weights.Length]);
    }

    internal Placer Placer => placer;

    /// <summary>The poses with the least loss since <see cref="Start"/>.</summary>
    internal ReadOnlySpan<Pose> Best => best;

    internal float BestLoss => leastLoss;

    /// <summary>Sweeps since <see cref="Start"/>.</summary>
    internal int Sweeps { get; private set; }

    internal bool IsSolved => leastLoss == 0;

    internal bool HasGivenUp { get; private set; }

    /// <summary>Sweeps without gain until a strike, and strikes until it gives up.</summary>
    internal int MostIdle { get; set; } = 200;

    /// <summary>See <see cref="MostIdle"/>.</summary>
    internal int MostStrikes { get; set; } = 3;

    /// <summary>Begins with the poses the field has; all pairs weigh the same.</summary>
    internal void Start()
    {
        Array.Fill(field.Weights, 1);
        (idle, strikes, Sweeps, HasGivenUp) = (0, 0, 0, false);
        leastLoss = float.MaxValue;
        Note(field.TotalLoss());
        strikeLoss = leastLoss;
    }

    /// <summary>One sweep over the overlapping forms in an order of chance.</summary>
    internal void Sweep()
    {
        Sweeps++;
        int count = 0;
        for (int i = 0; i < field.Movable; i++)
        {
            if (field.IsHit(i))
                order[count++] = i;
        }

        for (int k = count - 1; k > 0; k--)
        {
            int other = chance.Below(k + 1);
            (order[k], order[other]) = (order[other], order[k]);
        }

        for (int k = 0; k < count; k++)
        {
            if (field.IsHit(order[k]))
                placer.Improve(order[k]);
        }

        float loss = field.TotalLoss();
        bool better = loss < 0.98f * leastLoss;
        if (loss < leastLoss)
            Note(loss);
        idle = better ? 0 : idle + 1;
        if (loss > 0)
            Reweigh();
        if (idle >= MostIdle && !IsSolved)
            Strike();
    }

    private void Strike()
    {
        strikes = leastLoss < 0.98f * strikeLoss ? 0 : strikes + 1;
        (idle, strikeLoss) = (0, leastLoss);
        HasGivenUp = strikes >= MostStrikes;
        field.Take(best);
        bestWeights.CopyTo(field.Weights, 0);
    }

    private void Note(float loss)
    {
        leastLoss = loss;
        field.Poses.AsSpan(0, field.Movable).CopyTo(best);
        field.Weights.CopyTo(bestWeights, 0);
    }

    private void Reweigh()
    {
        float[] weights = field.Weights;
        float most = 0;
        for (int i = 0; i < field.Movable; i++)
        {
            for (int j = i + 1; field.IsHit(i) && j < field.Count; j++)
                most = Math.Max(most, field.PairLoss(i, j));
        }

        for (int i = 0; i < field.Movable; i++)
        {
            Span<float> row = weights.AsSpan(i * field.Stride, field.Stride);
            for (int j = 0; j < row.Length; j += Turned.Lanes)
            {
                Vector256<float> faded = Vector256.Create<float>(row[j..]) * Vector256.Create(0.95f);
                Vector256.Max(faded, Vector256<float>.One).CopyTo(row[j..]);
            }

            for (int j = 0; field.IsHit(i) && j < field.Count; j++)
            {
                float loss = field.PairLoss(i, j);
                if (loss > 0)
                    row[j] *= 1.26f + (0.84f * loss / most);
            }
        }
    }
}
