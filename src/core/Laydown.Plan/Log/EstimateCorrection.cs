namespace Laydown.Plan.Log;

/// <summary>What the log says about estimates of one press × mode × stock.</summary>
/// <param name="PressId">The press.</param>
/// <param name="ModeId">The mode.</param>
/// <param name="StockId">The stock.</param>
/// <param name="Factor">Middle of actual over estimate: as likely above as below; 1 where nothing is known.</param>
/// <param name="Low">Lower end of the range of actual over estimate.</param>
/// <param name="High">Upper end of it.</param>
/// <param name="Chance">Chance with which the next run lies in the range.</param>
/// <param name="Runs">Runs of this press × mode × stock that were learnt from.</param>
/// <param name="AllRuns">Runs of the whole shop that were learnt from; none where this is the default alone.</param>
/// <param name="LeastLately">Least actual over estimate of the last runs of this press × mode × stock; null where there are none.</param>
/// <param name="MostLately">Most of them.</param>
/// <param name="LatelyRuns">How many they are.</param>
/// <param name="Because">How it was reckoned, in one line.</param>
public sealed record EstimateCorrection(
    string PressId,
    string ModeId,
    string StockId,
    double Factor,
    double Low,
    double High,
    double Chance,
    int Runs,
    int AllRuns,
    double? LeastLately,
    double? MostLately,
    int LatelyRuns,
    string Because);
