using System.Diagnostics.CodeAnalysis;

namespace GreenLedger.Domain;

/// <summary>
/// The identity of one <typeparamref name="T"/>: a time-ordered UUID (version 7) that cannot be passed where the
/// identity of something else is asked for. The <c>default</c> is no identity at all and is never stored.
/// </summary>
public readonly record struct Id<T>(Guid Value) : IParsable<Id<T>>, IComparable<Id<T>>
{
    public static Id<T> New() => new(Guid.CreateVersion7());

    public static Id<T> Parse(string s, IFormatProvider? provider) => new(Guid.Parse(s, provider));

    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Id<T> result)
    {
        var read = Guid.TryParse(s, provider, out var value);
        result = new Id<T>(value);
        return read;
    }

    public int CompareTo(Id<T> other) => Value.CompareTo(other.Value);

    public override string ToString() => Value.ToString();

    public static bool operator <(Id<T> left, Id<T> right) => left.CompareTo(right) < 0;

    public static bool operator <=(Id<T> left, Id<T> right) => left.CompareTo(right) <= 0;

    public static bool operator >(Id<T> left, Id<T> right) => left.CompareTo(right) > 0;

    public static bool operator >=(Id<T> left, Id<T> right) => left.CompareTo(right) >= 0;
}
