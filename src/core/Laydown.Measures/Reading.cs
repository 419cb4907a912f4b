namespace Laydown.Measures;

/// <summary>Makes readings: a value taken, or the faults that kept it out.</summary>
public static class Reading
{
    /// <summary>A value that was taken.</summary>
    public static Reading<T> Of<T>(T value) => new(value);

    /// <summary>Input that was refused, with at least one fault.</summary>
    /// <exception cref="ArgumentException">No fault was given.</exception>
    public static Reading<T> Refused<T>(params IReadOnlyList<InputFault> faults) => new(faults);
}
