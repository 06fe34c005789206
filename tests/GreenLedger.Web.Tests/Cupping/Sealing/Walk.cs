using System.Collections.Concurrent;
using System.Net;
using GreenLedger.Domain;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Cupping.Sealing;

/// <summary>An answer that pairs a code of an open session with its coffee.</summary>
internal sealed record Leak(Id<Person> To, string Name, string Address, HttpStatusCode Status, SealedCup Cup, string Secret)
{
    /// <summary>The only page and the only route that say what stands under a code while a session is open.</summary>
    public bool IsOfKey => Address.Contains("/Cupping/Key/", StringComparison.Ordinal) || Address.EndsWith("/key", StringComparison.Ordinal);

    public override string ToString() => $"{Name}: {Address} ({(int)Status}) says that {Cup.Code} is {Secret}";
}

/// <summary>What several people find who walk through the same application at once.</summary>
internal sealed class Walk(SealedHouse sealing, IReadOnlyList<SealedTable> tables)
{
    /// <summary>They read back what they stored, which a dry run takes away; tests of their own send them for good.</summary>
    private static readonly string[] ReadBack = ["POST /api/samples/", "POST /api/arrivals/", "POST /api/stock/counts/{id}/found"];

    private readonly ConcurrentDictionary<SealedTable, AskedWords> _words = [];
    private readonly ConcurrentDictionary<string, bool> _sent = [];
    private int _asked;

    /// <summary>Routes that gave somebody what they are for.</summary>
    public ConcurrentDictionary<string, bool> Reached { get; } = [];

    /// <summary>With what somebody was answered who read a route.</summary>
    public ConcurrentDictionary<string, Dictionary<string, string>> Answered { get; } = [];

    public ConcurrentQueue<Leak> Leaks { get; } = [];

    public ConcurrentQueue<string> Faults { get; } = [];

    public IEnumerable<string> Unknown => _words.Values.SelectMany(words => words.Unknown.Keys).Distinct();

    public int Asked => _asked;

    /// <summary>A form, or all that a route takes besides, is sent once, by the first who came to it; the act itself is tried by everybody.</summary>
    public bool IsFirstToSend(string form) => _sent.TryAdd(form, true);

    /// <summary>Somebody comes in who asks about this table.</summary>
    public async Task<Insider> EnterAsync(Person person, SealedTable table, IReadOnlyList<AskedRoute> routes) =>
        new(this, await sealing.SignedInAsync(person), person, table, _words.GetOrAdd(table, one => new AskedWords(sealing.House, one)), routes);

    /// <summary>Hears an answer; <paramref name="againAsync"/> asks for the same without naming a code.</summary>
    public async Task HearAsync(Person person, string name, string address, HttpResponseMessage answer, Func<string, Task<HttpResponseMessage>>? againAsync)
    {
        Interlocked.Increment(ref _asked);
        if ((int)answer.StatusCode >= 500 && !ReadBack.Contains(name))
        {
            Faults.Enqueue($"{person.Name}: {name} {address} answers {(int)answer.StatusCode}");
        }

        if (answer.StatusCode is not (HttpStatusCode.Forbidden or HttpStatusCode.Unauthorized or HttpStatusCode.NotFound or HttpStatusCode.MethodNotAllowed))
        {
            Reached.TryAdd(name, true);
        }

        var text = await AnswerText.ReadAsync(answer);
        var given = tables.SelectMany(table => table.GivenAway(person.Id, Uri.UnescapeDataString(address), text)).ToList();
        if (given.Count > 0 && againAsync is not null && Meaningless(address) is { } other && other != address)
        {
            // What is there whatever code is asked for is no answer to the code.
            using var unasked = await againAsync(other);
            var there = await AnswerText.ReadAsync(unasked);
            given.RemoveAll(one => there.Contains(one.Secret, StringComparison.OrdinalIgnoreCase));
        }

        given.ForEach(one => Leaks.Enqueue(new Leak(person.Id, person.Name, address, answer.StatusCode, one.Cup, one.Secret)));
    }

    /// <summary>The address with a number in place of each code that it asks about.</summary>
    private string Meaningless(string address) =>
        tables.SelectMany(table => table.Cups).Aggregate(address, (asked, cup) => asked.Replace("=" + cup.Code, "=777001", StringComparison.Ordinal));
}
