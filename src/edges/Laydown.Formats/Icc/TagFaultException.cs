using System.Diagnostics.CodeAnalysis;

namespace Laydown.Formats.Icc;

/// <summary>A tag that cannot be taken; caught where the profile is read, never seen outside.</summary>
[SuppressMessage("Design", "CA1032", Justification = "Made in one place, caught in one.")]
internal sealed class TagFaultException(string tag, string found, string wanted) : Exception
{
    internal string Tag { get; } = tag;

    internal string Found { get; } = found;

    internal string Wanted { get; } = wanted;
}
