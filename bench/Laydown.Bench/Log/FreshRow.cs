namespace Laydown.Bench.Log;

/// <summary>A page as the first request of a fresh process of the built program; middle and longest of some starts.</summary>
/// <param name="Page">Its address.</param>
/// <param name="RestSeconds">Time left to the program between the first moment it takes a connection and the request, s.</param>
/// <param name="StartMs">From the start of the process until it takes a connection, ms.</param>
/// <param name="MedianMs">From the request to the end of the answer, middle, ms.</param>
/// <param name="MostMs">The same, longest, ms.</param>
/// <param name="ProcessorMs">Processor time of the program in that time, middle, ms; what runs beside the answer counts too.</param>
internal sealed record FreshRow(string Page, double RestSeconds, double StartMs, double MedianMs, double MostMs, double ProcessorMs);
