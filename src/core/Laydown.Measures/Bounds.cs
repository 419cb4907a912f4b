using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;

namespace Laydown.Measures;

/// <summary>Keeps records valid by construction: returns the value when it lies within its bounds, else names value and range.</summary>
public static class Bounds
{
    /// <summary><paramref name="value"/>, when it is a number from <paramref name="least"/> to <paramref name="most"/>, both allowed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or outside the range.</exception>
    public static double Within(double value, double least, double most, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value >= least && value <= most
            ? value
            : throw new ArgumentOutOfRangeException(name, value, Invariant($"{name}: found {value}; wanted {least} to {most}."));

    /// <summary><paramref name="value"/>, when it lies from <paramref name="least"/> to <paramref name="most"/>, both allowed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Within(int value, int least, int most, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        // Asked for each row of each tile: the words are written elsewhere, so that the question itself costs nothing.
        if (value < least || value > most)
            Refuse(value, least, most, name);
        return value;
    }

    /// <summary><paramref name="text"/>, when it holds at least one character that is not a blank.</summary>
    /// <exception cref="ArgumentException">The text is empty or blank.</exception>
    public static string Named(string text, [CallerArgumentExpression(nameof(text))] string name = "") =>
        string.IsNullOrWhiteSpace(text) ? throw new ArgumentException(Invariant($"{name}: found nothing; wanted a name."), name) : text;

    /// <summary><paramref name="items"/>, when there is at least one.</summary>
    /// <exception cref="ArgumentException">The list is empty.</exception>
    public static IReadOnlyList<T> NotEmpty<T>(IReadOnlyList<T> items, [CallerArgumentExpression(nameof(items))] string name = "") =>
        items.Count > 0 ? items : throw new ArgumentException(Invariant($"{name}: found no entry; wanted at least one."), name);

    [DoesNotReturn]
    private static void Refuse(int value, int least, int most, string name) =>
        throw new ArgumentOutOfRangeException(name, value, Invariant($"{name}: found {value}; wanted {least} to {most}."));
}
