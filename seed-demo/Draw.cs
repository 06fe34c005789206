using Bogus;
using Bogus.Distributions.Gaussian;

namespace GreenLedger.SeedDemo;

/// <summary>
/// Chance from a fixed seed. Each part of the scenario draws from one of its own, so that a change in one part leaves
/// the others as they were.
/// </summary>
internal sealed class Draw(int seed)
{
    private readonly Randomizer _any = new(seed);

    /// <summary>For what the domain draws itself: label codes and blind codes.</summary>
    public Random Random { get; } = new(seed);

    public double Normal(double mean, double deviation) => _any.GaussianDouble(mean, deviation);

    public bool Chance(double probability) => _any.Double() < probability;

    /// <summary>Both ends included.</summary>
    public int Between(int least, int most) => _any.Number(least, most);

    public double Between(double least, double most) => _any.Double(least, most);

    public T Of<T>(IReadOnlyList<T> things) => things[_any.Number(things.Count - 1)];

    public IReadOnlyList<T> Some<T>(IEnumerable<T> things, int count) => [.. _any.Shuffle(things).Take(count)];

    public T Weighted<T>(IReadOnlyList<(T Thing, double Weight)> things)
    {
        var at = _any.Double() * things.Sum(pair => pair.Weight);
        foreach (var (thing, weight) in things)
        {
            at -= weight;
            if (at < 0)
            {
                return thing;
            }
        }

        return things[^1].Thing;
    }
}
