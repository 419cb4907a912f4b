namespace Laydown.Bench.Layout;

/// <summary>How the rows of a variant are summed up.</summary>
internal enum LayoutSum
{
    /// <summary>Sum of ours over sum of best, less is better; gap in percent.</summary>
    GapOfSums,

    /// <summary>Mean of the gaps of single instances, less is better; percent.</summary>
    MeanGap,

    /// <summary>Mean of ours less best, more is better; points.</summary>
    MeanPointsOver,

    /// <summary>Mean of ours less best, less is better; points.</summary>
    MeanPointsUnder,

    /// <summary>Mean of ours over best, less is better; ratio.</summary>
    MeanRatio,

    /// <summary>Mean of ours, more is better.</summary>
    Mean,
}
