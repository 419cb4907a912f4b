using Laydown.Layout.Packing;

namespace Laydown.Layout.FreePacking;

/// <summary>One walk: pieces are taken off and put down again, within a limit of cost under the best so far, until none is left out.</summary>
/// <remarks>Goal-driven ruin and recreate [GardeynWauters2022], here on maximal rectangles, with late acceptance [BurkeBykov2017].</remarks>
internal sealed class FreeWorker
{
    private const int LateLength = 200;

    /// <summary>A goal not reached in so many tries for each entry of the list is begun anew with a list twice as long: slower, but it gets lower.</summary>
    private const int TriesPerEntry = 100;

    private const int MostLate = 25_600;

    /// <summary>Tries for a goal; after that a nearer one is set.</summary>
    private const int Patience = 2000;

    /// <summary>How far under the best cost the first goal lies, as a share of the cheapest sheet's.</summary>
    private const double FirstStep = 0.5;

    /// <summary>Under this share of the cheapest sheet's cost the goal is any lower cost.</summary>
    private const double LeastStep = 0.01;

    private readonly FreeModel model;
    private readonly FreeStart start;
    private readonly FreeState here;
    private readonly FreeState spare;
    private readonly FreeState aimed;
    private readonly FreeRuin ruin;
    private readonly FreeRecreate recreate;
    private readonly long[] late = new long[MostLate];
    private int lateLength = LateLength;
    private readonly double cheapest;
    private double step;
    private int tries;
    private int lateAt;
    private long hereValue;
    private long leastOut;

    internal FreeWorker(FreeModel model, FreeStart start, FreeLayout first, long seed)
    {
        (this.model, this.start) = (model, start);
        Chance chance = new(seed);
        int pieces = start.State.Out.Length, slots = start.State.Slots;
        (here, spare, aimed) = (new(model, pieces, slots), new(model, pieces, slots), new(model, pieces, slots));
        ruin = new(model, chance);
        recreate = new(model, start.Available, pieces, chance);
        Answer = first;

        // With one price every step is a whole sheet.
        cheapest = model.Cost.Where(c => c > 0).DefaultIfEmpty(0).Min();
        step = model.Cost.Distinct().Count() > 1 ? cheapest * FirstStep : 0;
        aimed.CopyFrom(start.State);
        here.CopyFrom(aimed);
        Aim();
    }

    /// <summary>The best layout it knows.</summary>
    internal FreeLayout Answer { get; private set; }

    /// <summary>Tries since it last bettered the answer.</summary>
    internal long Idle { get; private set; }

    /// <summary>Goes on from where another walk stands, if that is better.</summary>
    internal void Follow(FreeWorker other)
    {
        if (other.Answer.IsBetterThan(Answer))
            Answer = other.Answer;
        bool ahead = IsWhole ? other.IsWhole && other.aimed.Cost < FreeModel.Under(aimed.Cost) : other.IsWhole || other.aimed.OutArea < aimed.OutArea;
        if (!ahead)
            return;

        aimed.CopyFrom(other.aimed);
        here.CopyFrom(aimed);
        Aim();
    }

    /// <summary>So many tries, fewer where it is stopped or the cost meets the bound and nothing but cost counts.</summary>
    internal void Run(long tries, double bound, CancellationToken stop)
    {
        for (long i = 0; i < tries && !stop.IsCancellationRequested; i++)
        {
            if (model.OnlyCost && Answer.IsWhole && Answer.Cost <= bound)
                break;

            Idle++;
            Try();
        }
    }

    private bool IsWhole => aimed.OutCount == 0;

    private double Limit => IsWhole ? Math.Min(FreeModel.Under(aimed.Cost), aimed.Cost - step) : double.PositiveInfinity;

    private void Try()
    {
        if (++tries > Patience && step > 0)
            Nearer();
        else if (tries > (long)TriesPerEntry * lateLength)
            Anew();
        here.Begin();
        recreate.Know(here);
        ruin.Do(here);
        recreate.Do(here, Limit);
        long value = here.OutArea;
        bool taken = value <= hereValue || value <= late[lateAt];
        if (taken)
            hereValue = value;
        else
            here.Undo();
        late[lateAt] = Math.Min(late[lateAt], hereValue);
        lateAt = lateAt + 1 >= lateLength ? 0 : lateAt + 1;
        if (taken && value < leastOut)
            Judge(value);
    }

    // Never was less left out: a layout of less cost, or one with a nearly empty last sheet, or one with less missing.
    private void Judge(long value)
    {
        leastOut = value;
        if (value > 0 && IsWhole)
        {
            spare.CopyFrom(here);
            if (!recreate.OneMore(spare, aimed.Cost))
                return;

            Offer(spare);
            if (spare.Cost >= FreeModel.Under(aimed.Cost))
                return;

            aimed.CopyFrom(spare);
            here.CopyFrom(spare);
            Aim();
            return;
        }

        aimed.CopyFrom(here);
        Offer(aimed);
        if (value > 0)
            return;

        lateLength = LateLength;
        Aim();
    }

    private void Offer(FreeState state)
    {
        FreeLayout layout = start.Layout(model, state);
        if (!layout.IsBetterThan(Answer))
            return;

        Answer = layout;
        Idle = 0;
    }

    private void Nearer()
    {
        step = step / 2 < LeastStep * cheapest ? 0 : step / 2;
        here.CopyFrom(aimed);
        Aim();
    }

    private void Anew()
    {
        lateLength = Math.Min(MostLate, lateLength * 2);
        here.CopyFrom(aimed);
        Aim();
    }

    // Down to the goal: sheets go until the cost is under that of the best whole layout.
    private void Aim()
    {
        tries = 0;
        while (here.Cost > Limit && Poorest() is int poorest and >= 0)
            here.Close(poorest);
        recreate.DoAnew(here, Limit);
        here.Begin();
        hereValue = here.OutArea;
        leastOut = IsWhole ? long.MaxValue : hereValue;
        late.AsSpan(0, lateLength).Fill(hereValue);
    }

    private int Poorest()
    {
        (int poorest, double least) = (-1, double.MaxValue);
        for (int s = 0; s < here.Slots; s++)
        {
            if (here[s].Stock < 0 || model.Cost[here[s].Stock] <= 0)
                continue;

            double worth = here[s].Used / model.Cost[here[s].Stock];
            if (worth < least)
                (poorest, least) = (s, worth);
        }

        return poorest;
    }
}
