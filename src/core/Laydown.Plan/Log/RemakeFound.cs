namespace Laydown.Plan.Log;

/// <summary>Where the fault was found.</summary>
public enum RemakeFound
{
    /// <summary>In the file.</summary>
    File,

    /// <summary>In the proof.</summary>
    Proof,

    /// <summary>At the press.</summary>
    Press,

    /// <summary>In finishing.</summary>
    Finishing,

    /// <summary>By the customer.</summary>
    Customer,
}
