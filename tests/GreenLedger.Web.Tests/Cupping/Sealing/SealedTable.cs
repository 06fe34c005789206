using System.Buffers;
using System.Text;
using System.Text.RegularExpressions;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping.Sealing;

/// <summary>What stands under one code, and every word and identity that would tell which coffee it is.</summary>
internal sealed partial record SealedCup(string Code, string Label, string Reference, IReadOnlyList<string> Names, IReadOnlyList<string> Ids)
{
    public IReadOnlyList<string> Secrets { get; } = [Label, Reference, .. Names, .. Ids];

    public string Lot => Ids[2];

    public string Offer => Ids[3];

    public string Sample => Ids[4];

    /// <summary>The code as a word of its own, not as digits of a longer number or of an identity.</summary>
    public bool IsNamedIn(string text) => Regex.IsMatch(text, $@"(?<![\w.,-]){Code}(?![\w-]|[.,]\d)", RegexOptions.None, TimeSpan.FromSeconds(1));
}

/// <summary>An open session for coffees whose names nobody can overlook, with everything that the house can hold of them.</summary>
internal sealed record SealedTable(Id<CuppingSession> Id, string Word, string Title, IReadOnlyList<SealedCup> Cups, Id<Person> LaidOutBy, IReadOnlyList<Id<Person>> Panel)
{
    private readonly SearchValues<string> _secrets = SearchValues.Create([.. Cups.SelectMany(cup => cup.Secrets)], StringComparison.OrdinalIgnoreCase);

    private static readonly DateOnly Day = DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-2);

    /// <summary>Three coffees, of which the first stands there twice; one of the cuppers has begun.</summary>
    /// <param name="word">A word in every name of the table and its coffees.</param>
    /// <param name="first">The first of its codes: long, so that no price or weight of the house is one by chance.</param>
    public static async Task<SealedTable> LayOutAsync(HouseFixture house, string word, int first, Person laidOutBy, IReadOnlyList<Person> cuppers, Person? pourer) =>
        await house.FromLedgerAsync(async db =>
        {
            var by = await db.People.OrderBy(person => person.Id).Select(person => person.Id).FirstAsync();
            var coffees = new List<(Sample Sample, SealedCup Cup)>();
            foreach (var name in new[] { "Uno", "Dos", "Tres" })
            {
                coffees.Add(Coffee(db, by, $"{word} {name}", $"QX{first % 100}{name[..2].ToUpperInvariant()}", $"{first + (coffees.Count * 7)}"));
                await db.SaveChangesAsync();
            }

            var form = await db.CuppingForms.SingleAsync(one => one.Id == CuppingForm.HundredPointId);
            var session = new CuppingSession($"Table {word}", Day.AddDays(2), form, 5, laidOutBy.Id);
            coffees.ForEach(coffee => session.Pour(coffee.Sample, coffee.Cup.Code));
            var twice = coffees[0].Cup with { Code = $"{first + 77}" };
            session.Pour(coffees[0].Sample, twice.Code, isDuplicate: true);
            Seat(session, await db.People.ToListAsync(), cuppers, pourer);
            db.Add(session);
            await db.SaveChangesAsync();
            return new SealedTable(session.Id, word, session.Title, [.. coffees.Select(coffee => coffee.Cup), twice], laidOutBy.Id, [.. cuppers.Select(cupper => cupper.Id)]);
        });

    /// <summary>
    /// What an answer to this person gives away: a code with anything of its coffee. Whoever is on the panel and did not
    /// choose the coffees must not find any of them beside the session either. What was asked for by both its names is
    /// no news.
    /// </summary>
    public IEnumerable<(SealedCup Cup, string Secret)> GivenAway(Id<Person> person, string address, string text)
    {
        if (!text.AsSpan().ContainsAny(_secrets))
        {
            return [];
        }

        var mustNotKnow = Panel.Contains(person) && LaidOutBy != person;
        var (isSaid, isAsked) = (mustNotKnow && IsNamedIn(text) && !IsNamedIn(address), mustNotKnow && IsNamedIn(address));
        return Cups.SelectMany(cup =>
        {
            var says = isSaid || (cup.IsNamedIn(text) && !cup.IsNamedIn(address));
            var found = says || isAsked || cup.IsNamedIn(address) ? cup.Secrets.Where(secret => text.Contains(secret, StringComparison.OrdinalIgnoreCase)) : [];
            return found.Where(secret => says || !address.Contains(secret, StringComparison.OrdinalIgnoreCase)).Select(secret => (cup, secret));
        });
    }

    private bool IsNamedIn(string text) =>
        text.Contains(Title, StringComparison.OrdinalIgnoreCase) || text.Contains(Id.ToString(), StringComparison.OrdinalIgnoreCase) || Cups.Any(cup => cup.IsNamedIn(text));

    /// <summary>Puts the cuppers at the table; the first has handed in, opened a sheet again, and begun another.</summary>
    private static void Seat(CuppingSession session, List<Person> known, IReadOnlyList<Person> cuppers, Person? pourer)
    {
        var places = session.Samples.Select(sample => sample.Position).ToList();
        var seated = cuppers.Select(cupper => known.Single(person => person.Id == cupper.Id)).ToList();
        seated.ForEach(person => session.Seat(person, places));
        if (pourer is not null)
        {
            session.LetPour(known.Single(person => person.Id == pourer.Id));
        }

        var now = DateTimeOffset.UtcNow;
        var marks = new SheetMarks([.. Enumerable.Repeat(Mark.Of(8m), 7)], [5, 5, 5], [0, 0]);
        session.Submit(session.Samples[0].Code, seated[0], marks, now);
        session.Submit(session.Samples[1].Code, seated[0], marks, now);
        session.Reopen(session.Samples[1].Code, seated[0].Id, "The wrong cup", seated[0].Id, now);
    }

    /// <summary>A coffee with supplier, producer, offer, sample, grade, roast, note and attachment.</summary>
    private static (Sample Sample, SealedCup Cup) Coffee(LedgerContext db, Id<Person> by, string name, string label, string code)
    {
        var supplier = new Supplier($"Oculta {name}", SupplierKind.Exporter, "PE");
        var producer = new Producer($"Verborgen {name}", ProducerKind.Farm, "PE");
        var lot = new Lot($"SECRETREF {name}", $"Escondida {name}", supplier.Id);
        lot.Grow("PE", null, producer.Id, null, null, null);
        var offer = new Offer(
            supplier.Id, lot, new Packing(20, Weight.FromKilograms(60), null), Asking.Outright(PricePerWeight.Of(7.77m, Currency.Usd, PriceUnit.Kilogram)), new Terms(Incoterm.Fob, "Callao", null), OfferState.OnOffer, Day);
        var sample = Sample.Ask(lot.Id, SampleKind.Offer, label, supplier.Id, Weight.FromGrams(500), Day, by, $"Whispered {name}");
        sample.Send(Day, "By hand", $"TRACK {name}", by);
        sample.Receive(Day, Weight.FromGrams(480), "Sound", by);
        var grade = new GreenGrade(sample.Id, lot.Id, Day, by, Weight.FromGrams(350), $"Graded {name}");
        var now = DateTimeOffset.UtcNow;
        var roast = new SampleRoast(sample, now.AddHours(-12), by, null).Weigh(Weight.FromGrams(100), Weight.FromGrams(86));
        var file = new StoredFile($"{name} papers.txt", "text/plain", Encoding.UTF8.GetBytes($"All about Escondida {name}"), by, now);
        var attachments = new List<Attachment> { new(PapersOf.Sample, sample.Id.Value, file, by, now), new(PapersOf.Lot, lot.Id.Value, file, by, now) };
        var notes = new List<Note> { new(PapersOf.Sample, sample.Id.Value, $"Noted {name}", by, now), new(PapersOf.Offer, offer.Id.Value, $"Noted too {name}", by, now) };
        db.AddRange([supplier, new SupplierContact(supplier.Id, $"Seller of {name}", "seller@oculta.example", "es", Receives.Feedback), producer, new Plot(producer.Id, $"Plot of {name}", "PE", PlotShape.Point(-75.899m, -11.001m), 1.5m), lot, offer, sample, grade, roast, file, .. attachments, .. notes]);
        return (sample, new SealedCup(
            code, label, lot.Ref,
            [supplier.Name, producer.Name, lot.Name, $"Whispered {name}", $"TRACK {name}", $"Graded {name}", file.Name, $"Noted {name}", $"Noted too {name}"],
            [.. new[] { $"{supplier.Id}", $"{producer.Id}", $"{lot.Id}", $"{offer.Id}", $"{sample.Id}", $"{grade.Id}", $"{roast.Id}" }, .. attachments.Select(one => $"{one.Id}"), .. notes.Select(one => $"{one.Id}")]));
    }
}
