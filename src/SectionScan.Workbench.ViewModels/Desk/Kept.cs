namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>The newest of something that takes time to work out. Whoever asks while it is being worked out waits for it.</summary>
/// <typeparam name="T">What it is.</typeparam>
internal sealed class Kept<T>
    where T : class
{
    private readonly Lock gate = new();
    private object? keptFor;
    private T? kept;

    /// <summary>The thing for a state: kept, or made now.</summary>
    /// <param name="state">All that it depends on; compared by value.</param>
    /// <param name="make">Makes it.</param>
    public T For(object state, Func<T> make)
    {
        lock (gate)
        {
            if (kept is null || !state.Equals(keptFor))
            {
                (kept, keptFor) = (make(), state);
            }

            return kept;
        }
    }
}
