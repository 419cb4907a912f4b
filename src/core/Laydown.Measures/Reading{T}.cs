using System.Diagnostics.CodeAnalysis;

namespace Laydown.Measures;

/// <summary>Outside input as it came through: a value, or at least one fault, never both.</summary>
/// <typeparam name="T">What is read.</typeparam>
public sealed class Reading<T>
{
    private readonly T? value;

    internal Reading(T value)
    {
        this.value = value;
        Faults = [];
    }

    internal Reading(IReadOnlyList<InputFault> faults) => Faults = Bounds.NotEmpty(faults);

    /// <summary>Whether a value was taken.</summary>
    [MemberNotNullWhen(true, nameof(value))]
    public bool IsTaken => Faults.Count == 0;

    /// <summary>Why the input was refused; empty when it was taken.</summary>
    public IReadOnlyList<InputFault> Faults { get; }

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">The input was refused; the message lists the faults.</exception>
    public T Value => IsTaken ? value : throw new InvalidOperationException(string.Join("\n", Faults));

    /// <summary>The next step on the value, or the same faults.</summary>
    public Reading<TNext> Then<TNext>(Func<T, Reading<TNext>> next) => IsTaken ? next(value) : new(Faults);

    /// <summary>One of two answers, by what came.</summary>
    public TOut Match<TOut>(Func<T, TOut> taken, Func<IReadOnlyList<InputFault>, TOut> refused) => IsTaken ? taken(value) : refused(Faults);
}
