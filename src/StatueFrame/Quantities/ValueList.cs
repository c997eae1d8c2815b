using System.Collections;
using System.Runtime.CompilerServices;

namespace StatueFrame;

/// <summary>
/// An immutable list that compares by value, so that records made of lists still compare as records should. Write it
/// as a collection expression: <c>Levels = [a, b, c]</c>.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <typeparam name="T">The type of the items.</typeparam>
[CollectionBuilder(typeof(ValueList), nameof(ValueList.Create))]
public sealed class ValueList<T> : IReadOnlyList<T>, IEquatable<ValueList<T>>
{
    private readonly T[] items;

    internal ValueList(ReadOnlySpan<T> items) => this.items = items.ToArray();

    /// <summary>The list without items.</summary>
    public static ValueList<T> Empty { get; } = new([]);

    /// <summary>Number of items.</summary>
    public int Count => items.Length;

    /// <summary>The item at <paramref name="index"/>, from 0.</summary>
    /// <exception cref="IndexOutOfRangeException">The index is negative or not below <see cref="Count"/>.</exception>
    public T this[int index] => items[index];

    /// <summary>The items as a span.</summary>
    public ReadOnlySpan<T> AsSpan() => items;

    /// <summary>A new list with <paramref name="index"/> replaced by <paramref name="item"/>.</summary>
    public ValueList<T> With(int index, T item)
    {
        var copy = new ValueList<T>(items);
        copy.items[index] = item;
        return copy;
    }

    /// <inheritdoc/>
    public bool Equals(ValueList<T>? other) =>
        ReferenceEquals(this, other) || (other is not null && items.AsSpan().SequenceEqual(other.items));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ValueList<T>);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (T item in items)
            hash.Add(item);
        return hash.ToHashCode();
    }

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>The items in brackets.</summary>
    public override string ToString() => $"[{string.Join(", ", items)}]";
}

/// <summary>Makes <see cref="ValueList{T}"/>s.</summary>
public static class ValueList
{
    /// <summary>A list of the given items.</summary>
    public static ValueList<T> Create<T>(ReadOnlySpan<T> items) => items.IsEmpty ? ValueList<T>.Empty : new ValueList<T>(items);

    /// <summary>A list of the given items.</summary>
    public static ValueList<T> ToValueList<T>(this IEnumerable<T> items) => Create<T>([.. items]);
}
