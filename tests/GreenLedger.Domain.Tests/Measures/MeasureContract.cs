namespace GreenLedger.Domain.Tests.Measures;

/// <summary>What every measure promises: it equals itself, it orders as given, and what it prints it reads back.</summary>
internal static class MeasureContract
{
    /// <summary>Asserts the promises over distinct values in rising order.</summary>
    public static void Holds<T>(params T[] rising)
        where T : struct, IEquatable<T>, IComparable<T>, IParsable<T>
    {
        for (var i = 0; i < rising.Length; i++)
        {
            ReadsBack(rising[i]);
            for (var j = 0; j < rising.Length; j++)
            {
                Assert.Equal(i == j, rising[i].Equals(rising[j]));
                Assert.Equal(Math.Sign(i.CompareTo(j)), Math.Sign(rising[i].CompareTo(rising[j])));
            }
        }
    }

    public static void IsNotRead<T>(params string?[] texts)
        where T : struct, IParsable<T>
    {
        foreach (var text in texts)
        {
            Assert.False(T.TryParse(text, null, out var value), $"'{text}' was read as {value}");
            Assert.Equal(default, value);
        }
    }

    private static void ReadsBack<T>(T value)
        where T : struct, IEquatable<T>, IParsable<T>
    {
        Assert.True(T.TryParse(value.ToString(), null, out var read), $"'{value}' is not read back");
        Assert.Equal(value, read);
        Assert.Equal(value.GetHashCode(), read.GetHashCode());
        Assert.Equal(value, T.Parse(value.ToString()!, null));
    }
}
