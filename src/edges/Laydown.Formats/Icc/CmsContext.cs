using System.Runtime.InteropServices;
using System.Text;

namespace Laydown.Formats.Icc;

/// <summary>A context of Little CMS of its own: messages of one job never mix with those of another.</summary>
internal sealed class CmsContext : IDisposable
{
    private readonly List<string> messages = [];
    private GCHandle self;

    internal unsafe CmsContext()
    {
        self = GCHandle.Alloc(messages);
        Handle = LittleCms.CreateContext(0, GCHandle.ToIntPtr(self));
        if (Handle == 0)
            throw new InvalidOperationException("Little CMS could not make a context.");
        LittleCms.SetLogErrorHandler(Handle, &OnMessage);
    }

    /// <summary>The context, for the …THR functions.</summary>
    internal nint Handle { get; private set; }

    /// <summary>What the library said, newest last, or "no message".</summary>
    internal string Said
    {
        get
        {
            lock (messages)
                return messages.Count == 0 ? "no message" : string.Join("; ", messages);
        }
    }

    /// <summary>Frees the context; profiles and transforms made in it must be closed before.</summary>
    public void Dispose()
    {
        if (Handle == 0)
            return;
        LittleCms.DeleteContext(Handle);
        Handle = 0;
        self.Free();
    }

    [UnmanagedCallersOnly]
    private static unsafe void OnMessage(nint context, uint code, byte* text)
    {
        if (GCHandle.FromIntPtr(LittleCms.GetContextUserData(context)).Target is not List<string> messages)
            return;
        string said = Encoding.UTF8.GetString(MemoryMarshal.CreateReadOnlySpanFromNullTerminated(text));
        lock (messages)
        {
            // A hostile profile may complain without end.
            if (messages.Count < 20)
                messages.Add(said);
        }
    }
}
