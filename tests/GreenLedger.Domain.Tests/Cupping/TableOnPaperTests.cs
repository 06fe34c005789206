using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.LayingOut;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Cupping;

public class TableOnPaperTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private readonly Person _noor = new("Noor Haddad", Role.LeadCupper);
    private readonly Person _ines = new("Ines Duarte", Role.Cupper);
    private readonly Person _jonas = new("Jonas Weber", Role.Cupper);

    [Fact]
    public void Each_cupper_is_served_every_code_in_the_own_order_and_flights_are_those_of_the_table()
    {
        var session = Session();
        Layout([_ines, _jonas], most: 3).Fill(session, [], new Random(2));

        var paper = Paper(session);

        Assert.Equal(["Ines Duarte", "Jonas Weber"], paper.Cuppers.Select(cupper => cupper.Name));
        Assert.Equal(["Noor Haddad"], paper.Pourers);
        Assert.Equal(session.Samples.Where(sample => sample.Flight == 2).Select(sample => sample.Code).Order(), paper.Flights[1].Codes.Order());
        foreach (var (person, cupper) in new[] { _ines, _jonas }.Zip(paper.Cuppers))
        {
            Assert.Equal(session.ServedTo(person.Id).Select(sample => sample.Code), cupper.Served.SelectMany(flight => flight.Codes));
        }
    }

    [Fact]
    public void A_table_without_a_panel_has_one_set_without_a_name()
    {
        var session = Session();
        Layout([], most: 8).Fill(session, [], new Random(2));

        var cupper = Assert.Single(Paper(session).Cuppers);

        Assert.Null(cupper.Name);
        Assert.Equal(session.Samples.Select(sample => sample.Code), cupper.Served.SelectMany(flight => flight.Codes));
    }

    [Fact]
    public void Who_shuffles_bowls_alone_has_sheets_by_place()
    {
        var session = Session();
        Layout([_noor], most: 8).Fill(session, [], new Random(2));
        session.Prepare(null, null, null, Blinding.Undersides);

        var cupper = Assert.Single(Paper(session).Cuppers);

        Assert.Equal("Noor Haddad", cupper.Name);
        Assert.Equal(["P1", "P2", "P3", "P4"], Assert.Single(cupper.Served).Codes);
    }

    private CuppingSession Session() => new("Wednesday table", Today, CuppingForm.HundredPoint(), 5, _noor.Id);

    private TableLayout Layout(IReadOnlyList<Person> cuppers, int most)
    {
        var lot = new Lot("VF-1", "Vale Fundo", new Supplier("Porto Alto", SupplierKind.Exporter).Id);
        var samples = Enumerable.Range(0, 4).Select(number => new Sample(lot.Id, SampleKind.Offer, $"ACDE{(char)('A' + number)}", Today, Weight.FromGrams(350))).ToList();
        return new TableLayout(samples, null, 0, cuppers, [_noor], most);
    }

    private TableOnPaper Paper(CuppingSession session) => TableOnPaper.Of(
        "Harbour & Hill Roasters", session, TastingProtocol.Usual(), new[] { _noor, _ines, _jonas }.ToDictionary(person => person.Id, person => person.Name));
}
