using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping.LayingOut;

/// <summary>Puts samples and people on a table: places by chance, and for every cupper an own serving order.</summary>
/// <param name="Samples">What is cupped, each once.</param>
/// <param name="Cuppers">Who hands in sheets; none leaves the table to whoever may cup.</param>
public sealed record TableLayout(IReadOnlyList<Sample> Samples, IReadOnlyList<Person> Cuppers, IReadOnlyList<Person> Pourers)
{
    /// <summary>Lays the session out.</summary>
    /// <param name="random">Must not be foreseeable: callers pass a cryptographic one.</param>
    /// <exception cref="RuleBrokenException">No sample was chosen.</exception>
    public void Fill(CuppingSession session, Random random)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(random);
        Rule.Require(Samples.Count > 0, "Choose at least one sample for the table.", nameof(Samples));
        var places = Samples.ToArray();
        random.Shuffle(places);
        foreach (var sample in places)
        {
            session.Pour(sample, random);
        }

        if (Cuppers.Count > 0)
        {
            var orders = ServingOrders.For(places.Length, Cuppers.Count, random).Orders;
            foreach (var (cupper, order) in Cuppers.Zip(orders))
            {
                session.Seat(cupper, [.. order.Select(place => place + 1)], Pourers.Any(one => one.Id == cupper.Id));
            }
        }

        foreach (var pourer in Pourers.Where(one => session.MemberOf(one.Id) is null))
        {
            session.LetPour(pourer);
        }
    }
}
