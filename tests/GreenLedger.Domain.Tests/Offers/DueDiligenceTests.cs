using GreenLedger.Domain.Due;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Tests.Offers;

/// <summary>What Article 9 of Regulation (EU) 2023/1115 and its Annex II ask for, as handbook, trade 7.2 and 7.3, tells it.</summary>
public sealed class DueDiligenceTests
{
    private static readonly Producer Grower = new("Finca 1", ProducerKind.Farm, "CO");

    private static readonly DiligenceFacts Facts = new(
        DiligenceRole.Operator, new DateOnly(2026, 10, 1), new DateOnly(2027, 1, 31), "Title deed", "Satellite 2020", null, "26abcdefghij12", "V-12345");

    [Fact]
    public void An_operator_is_told_what_is_missing_for_a_statement()
    {
        var lot = new Lot("CA-17", "Cerro Alto washed");
        var held = new DueDiligence(lot.Id);

        // Handbook, trade 7.3: plots, time, quantity, country, supplier, two kinds of evidence, risk, and the statement itself.
        Assert.Equal(9, held.Open(About(lot)).Missing.Count);
        held.State(Facts);

        Assert.Equal("26ABCDEFGHIJ12", held.StatementReference);
        Assert.Equal(["the net weight", "the country of production", "the supplier", "the judgement of risk and what lessened it"], held.Open(About(lot, Field("Lote 3", -75.899m))).Missing);
        Assert.Equal(3, held.Open(About(lot, Field("Lote 3", -75.899m)) with { IsLowRisk = true }).Missing.Count);
    }

    /// <summary>Handbook, trade 7.3: the system returns both numbers.</summary>
    [Theory]
    [InlineData(DiligenceRole.Operator, null, "the verification number that came with the reference number", null)]
    [InlineData(DiligenceRole.Operator, "V-12345", null, null)]
    [InlineData(DiligenceRole.Downstream, null, null, "The supplier’s reference number stands without its verification number")]
    [InlineData(DiligenceRole.Downstream, "V-12345", null, null)]
    public void A_reference_number_without_its_verification_number_is_open(DiligenceRole role, string? verification, string? missing, string? doubt)
    {
        var lot = new Lot("CA-17", "Cerro Alto washed", Id<Supplier>.New());
        var held = new DueDiligence(lot.Id);
        held.State(Facts with { Role = role, VerificationNumber = verification });

        var open = held.Open(About(lot));

        Assert.Equal(missing, open.Missing.FirstOrDefault(what => what.Contains("verification", StringComparison.Ordinal)));
        Assert.Equal(doubt is not null, open.ToLookAt.Any(what => what.StartsWith(doubt ?? "The supplier’s", StringComparison.Ordinal)));
    }

    /// <summary>Handbook, trade 7.3: a date or a range; the crop year is acceptable.</summary>
    [Theory]
    [InlineData(null, null, null, true, false)]
    [InlineData("2026/27", null, null, false, true)]
    [InlineData("2026/27", "2026-10-01", "2027-01-31", false, false)]
    [InlineData(null, "2026-10-01", null, false, true)]
    public void A_crop_year_in_place_of_the_days_of_the_harvest_is_to_be_looked_at(string? cropYear, string? from, string? until, bool isMissing, bool isInDoubt)
    {
        var lot = new Lot("CA-17", "Cerro Alto washed");
        lot.Prepare(cropYear, null, null, null);
        var held = new DueDiligence(lot.Id);
        held.State(Facts with { ProducedFrom = Day(from), ProducedUntil = Day(until) });

        var open = held.Open(About(lot));

        Assert.Equal(isMissing, open.Missing.Any(what => what.StartsWith("when it was produced", StringComparison.Ordinal)));
        Assert.Equal(isInDoubt, open.ToLookAt.Count == 1);
    }

    /// <summary>Handbook, trade 7.3: one bad plot disqualifies the goods from it.</summary>
    [Fact]
    public void Doubts_about_the_plots_are_to_be_looked_at()
    {
        var lot = new Lot("CA-17", "Cerro Alto washed");
        lot.Grow("CO", null, Grower.Id, null, null, null);
        var held = new DueDiligence(lot.Id);
        held.State(Facts);

        var (one, same, elsewhere) = (Field("Lote 3", -75.899000m), Field("Lote 4", -75.899000m), new Plot(Grower.Id, "Lote 5", "PE", PlotShape.Point(-75.800000m, 2.100000m), 1m));
        var open = held.Open(About(lot, one, same, elsewhere));
        var unknown = held.Open(new DiligenceCase(lot, null, [elsewhere], false));

        Assert.Contains(open.ToLookAt, what => what.Contains("Lote 3 and Lote 4 are the same place", StringComparison.Ordinal));
        Assert.Single(open.ToLookAt, what => what.StartsWith("Lote 5 is said to lie in PE", StringComparison.Ordinal));
        Assert.Equal(["Lote 5 is said to lie in PE, the lot is of CO."], unknown.ToLookAt);
    }

    /// <summary>Parchment counts 0.8 and dried cherry 0.5 of its weight in green coffee: ITC, The Coffee Guide, 01.01.02 (handbook, trade 1.2). The lot weighs 1,200 kg.</summary>
    [Theory]
    [InlineData(1500, CoffeeForm.Parchment, null)]
    [InlineData(1499, CoffeeForm.Parchment, "The plots gave 1,499 kg of parchment, 1,199.2 kg in green coffee, and the lot weighs 1,200 kg")]
    [InlineData(2399, CoffeeForm.DriedCherry, "The plots gave 2,399 kg of dried cherry, 1,199.5 kg in green coffee")]
    [InlineData(1200, CoffeeForm.Green, null)]
    public void More_than_the_plots_gave_is_to_be_looked_at(int kilograms, CoffeeForm form, string? doubt)
    {
        var lot = Weighing1200();
        var held = new DueDiligence(lot.Id);
        held.State(Facts with { Harvest = Weight.FromKilograms(kilograms), HarvestForm = form });

        Assert.Equal(doubt is not null, held.Open(About(lot)).ToLookAt.Any(what => what.StartsWith(doubt ?? "The plots gave", StringComparison.Ordinal)));
    }

    /// <summary>1,200 kg from a quarter of a hectare are 4,800 kg a hectare: worked by hand; the house finds at most 5,000 kg likely until it says otherwise.</summary>
    [Theory]
    [InlineData(5000, false)]
    [InlineData(4800, false)]
    [InlineData(4799, true)]
    public void More_than_a_hectare_gives_is_to_be_looked_at(int most, bool isInDoubt)
    {
        var lot = Weighing1200();
        var held = new DueDiligence(lot.Id);
        held.State(Facts);
        var habits = new DiligenceHabits();
        habits.Keep(new DiligenceTerms(null, habits.AppliesGenerally, habits.AppliesToSmall, habits.NotDeforestedAfter, habits.KeepYears, habits.ExportMegabytes, habits.Source, most));
        var plot = new Plot(Grower.Id, "Lote 5", "CO", PlotShape.Point(-75.8m, 2.1m), 0.25m);

        var open = held.Open(About(lot, plot) with { Habits = habits });

        Assert.Equal(isInDoubt, open.ToLookAt.Any(what => what.StartsWith("1,200 kg from 0.25 ha are 4,800 kg a hectare", StringComparison.Ordinal)));
    }

    private static Lot Weighing1200()
    {
        var lot = new Lot("CA-17", "Cerro Alto washed");
        lot.Grow("CO", null, Grower.Id, null, null, null);
        lot.Pack(new Packing(20, Weight.FromKilograms(60m), null));
        return lot;
    }

    /// <summary>Handbook, trade 7.3 and check value 63: at most 14 letters and digits; no official pattern was found, so that it only warns.</summary>
    [Theory]
    [InlineData("26abcdefghij12", null)]
    [InlineData("26ABCDEFGHIJ123", "has 15 characters: those that the EU’s system returns")]
    [InlineData("26-ABC", "has 6 characters, some of them neither letters nor digits")]
    public void A_reference_number_of_another_shape_is_taken_and_doubted(string reference, string? doubt)
    {
        var lot = new Lot("CA-17", "Cerro Alto washed");
        var held = new DueDiligence(lot.Id);

        held.State(Facts with { StatementReference = reference });
        var told = held.Open(About(lot)).ToLookAt.Where(what => what.StartsWith("The reference number", StringComparison.Ordinal)).ToList();
        held.State(Facts with { StatementReference = reference, Role = DiligenceRole.Downstream });

        Assert.Equal(reference.ToUpperInvariant(), held.StatementReference);
        Assert.Equal(doubt is null, told.Count == 0);
        Assert.All(told, what => Assert.Contains(doubt!, what, StringComparison.Ordinal));
        Assert.Equal(told, held.Open(About(lot)).ToLookAt.Where(what => what.StartsWith("The reference number", StringComparison.Ordinal)));
        Assert.Throws<RuleBrokenException>(() => held.State(Facts with { StatementReference = new string('A', 61) }));
    }

    /// <summary>docs/decisions/0015: who attached it, on the same day by the house's clocks, with a reason.</summary>
    [Fact]
    public void A_file_attached_by_mistake_is_taken_back_by_who_attached_it_on_the_same_day()
    {
        var lot = new Lot("CA-17", "Cerro Alto washed");
        var held = new DueDiligence(lot.Id);
        held.State(Facts with { PlacedOn = new DateOnly(2026, 11, 1) });
        var file = Attached(lot);
        held.Take(EvidenceKind.Legality, file);
        // Attached at noon; 23:30 in Amsterdam is still 1 November there, half an hour later is not.
        var (zone, late, after) = (ClockZone.Of("Europe/Amsterdam"), new DateTimeOffset(2026, 11, 1, 22, 30, 0, TimeSpan.Zero), new DateTimeOffset(2026, 11, 1, 23, 0, 0, TimeSpan.Zero));

        Assert.Throws<RuleBrokenException>(() => held.TakeBack(file, "Wrong lot", Id<Person>.New(), late, zone));
        Assert.Throws<RuleBrokenException>(() => held.TakeBack(file, "Wrong lot", file.By, after, zone));
        Assert.Throws<RuleBrokenException>(() => held.TakeBack(file, " ", file.By, late, zone));
        Assert.Throws<RuleBrokenException>(() => held.LetGo(file.Id, null, new DiligenceHabits(), new DateOnly(2026, 11, 1)));
        held.TakeBack(file, "Wrong lot", file.By, late, zone);

        Assert.Equal(("Wrong lot", true), (Assert.Single(held.Files).MistakenBecause, held.Files[0].IsMistaken));
        held.LetGo(file.Id, null, new DiligenceHabits(), new DateOnly(2026, 11, 1));
        Assert.Throws<RuleBrokenException>(() => held.TakeBack(file, "Wrong lot", file.By, late, zone));
    }

    /// <summary>Handbook, trade 7.3: evidence by words or by a file; retention of 5 years, from memory there.</summary>
    [Theory]
    [InlineData(null, "2026-10-29", "2031-10-29")]
    [InlineData("2026-11-05", "2026-10-29", "2031-11-05")]
    [InlineData(null, null, null)]
    public void A_file_of_evidence_is_kept_for_years_after_placing_on_the_market(string? placed, string? received, string? until)
    {
        var lot = new Lot("CA-17", "Cerro Alto washed");
        var held = new DueDiligence(lot.Id);
        held.State(Facts with { PlacedOn = Day(placed) });
        var file = Attached(lot);
        held.Take(EvidenceKind.Legality, file);
        var (habits, last) = (new DiligenceHabits(), Day(until));

        Assert.Equal(last, held.KeptUntil(Day(received), habits));
        held.LetGo(file.Id, Day(received), habits, last?.AddDays(1) ?? new DateOnly(2026, 11, 26));
        if (last is { } day)
        {
            var refusal = Assert.Throws<RuleBrokenException>(() => held.LetGo(file.Id, Day(received), habits, day));
            Assert.Contains(day.ToString("d MMMM yyyy", System.Globalization.CultureInfo.InvariantCulture), refusal.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Evidence_by_a_file_is_not_missing_and_a_file_of_another_lot_is_none()
    {
        var lot = new Lot("CA-17", "Cerro Alto washed");
        var held = new DueDiligence(lot.Id);
        held.State(Facts with { Legality = null });

        Assert.Contains("evidence that it was grown by the law of the country", held.Open(About(lot)).Missing);
        Assert.DoesNotContain("evidence that it was grown by the law of the country", held.Open(About(lot) with { Filed = [EvidenceKind.Legality] }).Missing);
        Assert.Throws<RuleBrokenException>(() => held.Take(EvidenceKind.Legality, Attached(new Lot("CA-18", "Another"))));
    }

    /// <summary>Article 38 as amended (handbook, trade 7.1).</summary>
    [Theory]
    [InlineData(null, "2026-12-30")]
    [InlineData(FirmSize.General, "2026-12-30")]
    [InlineData(FirmSize.Small, "2027-06-30")]
    public void The_regulation_applies_by_the_size_of_the_firm(FirmSize? size, string from)
    {
        var habits = new DiligenceHabits();
        habits.Keep(new DiligenceTerms(size, habits.AppliesGenerally, habits.AppliesToSmall, habits.NotDeforestedAfter, habits.KeepYears, habits.ExportMegabytes, habits.Source));

        Assert.Equal(Day(from), habits.AppliesFrom);
    }

    [Theory]
    [InlineData(0, 25)]
    [InlineData(51, 25)]
    [InlineData(5, 0)]
    public void Years_and_limits_out_of_reach_are_refused(int years, int megabytes)
    {
        var habits = new DiligenceHabits();

        Assert.Throws<RuleBrokenException>(() => habits.Keep(new DiligenceTerms(null, habits.AppliesGenerally, habits.AppliesToSmall, habits.NotDeforestedAfter, years, megabytes, null)));
        Assert.Equal(5, habits.KeepYears);
    }

    /// <summary>Before 30 December 2026 nothing is asked (handbook, trade 7.1).</summary>
    [Theory]
    [InlineData("2026-12-29", false)]
    [InlineData("2026-12-30", true)]
    public void What_is_missing_is_due_on_the_day_the_lot_comes(string on, bool isDue)
    {
        var lot = new Lot("CA-17", "Cerro Alto washed");

        var lines = DueDates.Diligence(lot, new DueDiligence(lot.Id).Missing(About(lot)), Day(on), new DiligenceHabits()).ToList();

        string[] said = isDue ? ["complete the due diligence of CA-17 Cerro Alto washed: 9 points missing"] : [];
        Assert.Equal(said, lines.Select(line => line.What));
        Assert.All(lines, line => Assert.Equal(Day(on), line.On));
    }

    private static Attachment Attached(Lot lot)
    {
        var now = new DateTimeOffset(2026, 11, 1, 12, 0, 0, TimeSpan.Zero);
        var by = Id<Person>.New();
        return new Attachment(PapersOf.Lot, lot.Id.Value, new StoredFile("deed.pdf", "application/pdf", [1], by, now), by, now);
    }

    private static DateOnly? Day(string? text) => text is null ? null : DateOnly.ParseExact(text, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private static DiligenceCase About(Lot lot, params Plot[] plots) => new(lot, Grower, plots, false);

    private static Plot Field(string name, decimal longitude) => new(Grower.Id, name, "CO", PlotShape.Point(longitude, 2.001000m), 2.5m);
}
