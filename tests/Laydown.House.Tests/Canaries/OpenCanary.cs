namespace Laydown.House.Tests.Canaries;

/// <summary>A small wrong type: public, not sealed, with a static field that can be reassigned.</summary>
public class OpenCanary
{
#pragma warning disable CA2211
    public static int Count;
#pragma warning restore CA2211
}
