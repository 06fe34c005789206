using CsCheck;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.Reading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Cupping.Reading;

public class ResultListTests
{
    private static readonly CuppingForm HundredPoint = CuppingForm.HundredPoint();
    private static readonly CuppingForm Affective = CuppingForm.Affective();
    private static readonly DateOnly Today = new(2026, 11, 25);

    /// <summary>The same row under headings of five languages; common trade words, from memory.</summary>
    [Theory]
    [InlineData("Sample;Aroma;Flavor;Aftertaste;Acidity;Body;Balance;Uniformity;Clean Cup;Sweetness;Overall;Total Cup Points")]
    [InlineData("Lot Number;Fragrance/Aroma;Flavour;After-taste;Acidity (H/L);Body;Balance;Uniform Cups;Clean cup (10);Sweetness;Cupper's Points;Final Score")]
    [InlineData("Muestra;Fragancia/Aroma;Sabor;Sabor residual;Acidez;Cuerpo;Equilibrio;Uniformidad;Taza limpia;Dulzor;Puntaje catador;Puntaje total")]
    [InlineData("Amostra;Fragrância/Aroma;Sabor;Finalização;Acidez;Corpo;Equilíbrio;Uniformidade;Xícara limpa;Doçura;Impressão geral;Nota final")]
    [InlineData("Échantillon;Arôme;Saveur;Arrière-goût;Acidité;Corps;Équilibre;Uniformité;Tasse propre;Douceur;Appréciation globale;Note finale")]
    [InlineData("Muster;Duft/Aroma;Geschmack;Nachgeschmack;Säure;Körper;Ausgewogenheit;Gleichmäßigkeit;Saubere Tasse;Süße;Gesamteindruck;Gesamtpunktzahl")]
    public void Usual_headings_of_five_languages_are_understood(string headings)
    {
        var table = Table(headings, "A-1;8,17;8,25;8;8;7,75;7,83;10;10;10;8;86");

        var list = ResultList.From(table, HundredPoint, "panel");

        var row = Assert.Single(list.Accepted);
        Assert.Empty(list.SetAside);
        Assert.Equal("A-1", row.Name);
        // Worked by hand: 8.17 + 8.25 + 8 + 8 + 7.75 + 7.83 + 30 + 8.
        Assert.Equal(86.00m, row.Computed);
        Assert.Equal(86m, row.Result.StatedTotal);
        Assert.Equal(HundredPoint.Id, ResultList.Guess(table.Mapping, [HundredPoint, Affective]).Id);
    }

    [Fact]
    public void Affective_results_are_told_by_their_sections()
    {
        var table = Table(
            "Code;Fragrance;Aroma;Flavor;Aftertaste;Acidity;Sweetness;Mouthfeel;Overall;Non-uniform cups;Defective cups;Score",
            "S1;6;6;7;6;6;5;6;6;1;0;82.25");

        var form = ResultList.Guess(table.Mapping, [HundredPoint, Affective]);
        var list = ResultList.From(table, form, "panel");

        Assert.Equal(Affective.Id, form.Id);
        // Handbook quality.md section 1.2: sum 48, one non-uniform cup gives 82.25.
        Assert.Equal(82.25m, list.Accepted.Single().Computed);
        Assert.Empty(list.Disagreements);
    }

    /// <summary>Above 0.05 is listed; 0.05 itself is not.</summary>
    [Theory]
    [InlineData("83.50", false)]
    [InlineData("83.55", false)]
    [InlineData("83.56", true)]
    [InlineData("83.44", true)]
    [InlineData("", false)]
    public void A_stated_total_that_does_not_add_up_is_listed_not_corrected(string stated, bool listed)
    {
        // Handbook quality.md section 1.1, worked total 1: 83.50.
        var list = ResultList.From(Table(English, $"A-1;7.75;7.75;7.50;7.75;7.50;7.50;10;10;10;7.75;{stated}"), HundredPoint, "panel");

        Assert.Equal(listed, list.Disagreements.Any());
        Assert.Equal(83.50m, list.Accepted.Single().Computed);
        Assert.Equal(stated.Length > 0 ? decimal.Parse(stated, null) : null, list.Accepted.Single().Result.StatedTotal);
    }

    [Theory]
    [InlineData("A-1;7.75;pending;7.50;7.75;7.50;7.50;10;10;10;7.75;83.5", "Flavor is not a number")]
    [InlineData("A-1;7.75;;7.50;7.75;7.50;7.50;10;10;10;7.75;83.5", "Flavor is missing")]
    [InlineData("A-1;7.75;77.5;7.50;7.75;7.50;7.50;10;10;10;7.75;83.5", "Flavor: 77.5 lies outside 0 to 10")]
    [InlineData("A-1;7.75;7.75;7.50;7.75;7.50;7.50;10;10;10;7.75;835", "no form gives more than 100")]
    [InlineData("A-1;0;0;0;0;0;0;0;0;0;0;0", "nothing was scored")]
    [InlineData("Average;7.75;7.75;7.50;7.75;7.50;7.50;10;10;10;7.75;83.5", "not a sample")]
    [InlineData("A-1;7.75;7.75;7.50;7.75;7.50;7.50;10;10;10;7.75;n.n.", "total is not a number")]
    public void A_row_that_cannot_be_taken_is_set_aside_with_a_sentence(string row, string says)
    {
        var list = ResultList.From(Table(English, row, "B-2;7.75;7.75;7.50;7.75;7.50;7.50;10;10;10;7.75;83.5"), HundredPoint, "panel");

        var aside = Assert.Single(list.SetAside);
        Assert.Contains(says, aside.Problem.Message, StringComparison.Ordinal);
        Assert.Equal(2, aside.Row);
        Assert.Equal("B-2", Assert.Single(list.Accepted).Name);
    }

    [Fact]
    public void The_same_sample_twice_by_one_cupper_is_set_aside_once()
    {
        const string points = "7.75;7.75;7.50;7.75;7.50;7.50;10;10;10;7.75;83.5";

        var list = ResultList.From(Table(English, $"A-1;{points}", $"a-1;{points}"), HundredPoint, "panel");

        Assert.Single(list.Accepted);
        Assert.Contains("row 2", Assert.Single(list.SetAside).Problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Cups_counted_from_0_to_5_become_points()
    {
        // Handbook quality.md section 1.1, worked total 3: 4/4/5 cups are 26 points; no deduction here, so 76.75.
        var list = ResultList.From(Table(English, "A-1;7.50;7.25;7.00;7.25;7.25;7.25;4;4;5;7.25;76.75"), HundredPoint, "panel");

        Assert.Equal(76.75m, list.Accepted.Single().Computed);
        Assert.Empty(list.Disagreements);
    }

    [Fact]
    public void Titles_two_line_headings_and_physical_figures_are_read()
    {
        var table = Table(
            "Cupping results 2025;;;;;;;;;;;;;;",
            ";Clean;;;;;;;;;;;;;",
            "Sample;Aroma;Flavor;Aftertaste;Acidity;Body;Balance;Uniformity;Clean Cup;Sweetness;Overall;Defects;Total;Moisture;Category One Defects;Certification Body",
            "A-1;7.50;7.25;7.00;7.25;7.25;7.25;8;8;10;7.25;2;74.75;0.11;1;Some office");

        var row = ResultList.From(table, HundredPoint, "panel").Accepted.Single();

        // Handbook quality.md section 1.1, worked total 3.
        Assert.Equal(74.75m, row.Computed);
        Assert.Equal(new ResultPhysical(11m, null, 1m, null, null), row.Physical);
        Assert.Equal(4, row.Row);
    }

    [Fact]
    public void A_column_can_be_corrected_by_its_heading()
    {
        var table = Table("Sample;Aroma;Flavor;Aftertaste;Acidity;Body;Balance;Uniformity;Clean Cup;Sweetness;Overall;Jury", "A-1;7.75;7.75;7.50;7.75;7.50;7.50;10;10;10;7.75;83.5");

        var mapped = table with { Mapping = table.Mapping.With(new Dictionary<string, string> { ["jury"] = ResultWords.Total }) };

        Assert.Equal(83.5m, ResultList.From(mapped, HundredPoint, "panel").Accepted.Single().Result.StatedTotal);
        Assert.Throws<RuleBrokenException>(() => table.Mapping.With(new Dictionary<string, string> { ["nowhere"] = ResultWords.Total }));
    }

    [Fact]
    public void A_file_without_the_forms_attributes_is_refused_by_name()
    {
        var table = Table("Sample;Aroma;Flavor;Aftertaste;Acidity;Body;Total", "A-1;7;7;7;7;7;80");

        var refused = Assert.Throws<RuleBrokenException>(() => ResultList.From(table, HundredPoint, "panel"));

        Assert.Contains("Sweetness", refused.Message, StringComparison.Ordinal);
        Assert.Throws<RuleBrokenException>(() => Table("Reference;Price;Bags", "A-1;3.20;100"));
    }

    [Fact]
    public void Whatever_a_sheet_gives_comes_back_from_a_file_of_it() => Gen
        .Select(Gen.Int[24, 40].Array[7], Gen.Int[0, 5].Array[3], Gen.Int[0, 2].Array[2])
        .Sample((quarters, cups, bad) =>
        {
            var sheet = SheetTotal.Of(HundredPoint.Rules, new SheetMarks([.. quarters.Select(quarter => Mark.Of(quarter / 4m))], cups, bad), 5);
            var cells = sheet.Attributes.Select(line => Cell.Of(line.Points)).Append(Cell.Of(sheet.Deductions.Sum(line => line.Points))).Append(Cell.Of(sheet.Total)).Prepend(Cell.Of("A-1")).ToList();
            // A second row with full cups says that cup attributes are points.
            var full = "B-2;7;7;7;7;7;7;10;10;10;7;0;79".Split(';').Select(Cell.Of).ToList();
            var headings = "Sample;Aroma;Flavor;Aftertaste;Acidity;Body;Balance;Uniformity;Clean Cup;Sweetness;Overall;Defects;Total".Split(';').Select(Cell.Of).ToList();

            var list = ResultList.From(ResultTable.Of([new OfferLine(1, headings), new OfferLine(2, cells), new OfferLine(3, full)]), HundredPoint, "panel");

            Assert.Equal(sheet.Total, list.Accepted[0].Computed);
            Assert.Empty(list.Disagreements);
        });

    [Fact]
    public void Past_results_become_closed_sessions_a_day_and_unknown_names_become_lots()
    {
        const string points = "7.75;7.75;7.50;7.75;7.50;7.50;10;10;10;7.75;83.5";
        var table = Table(English + ";Date;Cupper", $"A-1;{points};2025-03-01;Ines", $"A-1;{points};2025-03-01;Jonas", $"New one;{points};2025-03-02;Ines");
        var lot = new Lot("A-1", "Loma Alta");
        var known = new Dictionary<string, KnownSample> { ["A-1"] = new(lot.Id, null) };

        var taking = PastTaking.Of(
            ResultList.From(table, HundredPoint, "panel"), known, new LabelCodes([], new Random(1)),
            new PastCase("results.csv", Today, null, Id<Person>.New(), DateTimeOffset.UnixEpoch, new ExpectedErrors(1, 0.5), new Random(1)));

        Assert.Equal([new DateOnly(2025, 3, 1), new DateOnly(2025, 3, 2)], taking.Sessions.Select(session => session.HeldOn));
        Assert.All(taking.Sessions, session => Assert.True(session.IsClosed));
        Assert.Equal("New one", Assert.Single(taking.NewLots).Name);
        Assert.Equal(2, taking.NewSamples.Count);
        Assert.Equal(lot.Id, taking.SampleOf("A-1").LotId);
        Assert.Equal(2, taking.Sessions[0].Result!.Samples.Single().Cuppers);
        Assert.True(taking.Sessions[0].Sheets[0].IsPast);
        Assert.Equal(83.5m, taking.Sessions[0].Sheets[0].Arithmetic(HundredPoint.Rules, 5).Total);
    }

    [Fact]
    public void Two_spellings_of_one_lot_are_one_sample()
    {
        const string points = "7.75;7.75;7.50;7.75;7.50;7.50;10;10;10;7.75;83.5";
        var table = Table(English + ";Cupper", $"A-1;{points};Ines", $"a 1;{points};Jonas");
        var lot = new Lot("A-1", "Loma Alta");
        var known = new Dictionary<string, KnownSample> { ["A-1"] = new(lot.Id, null), ["a 1"] = new(lot.Id, null) };

        var taking = PastTaking.Of(
            ResultList.From(table, HundredPoint, "panel"), known, new LabelCodes([], new Random(1)),
            new PastCase("results.csv", Today, null, Id<Person>.New(), DateTimeOffset.UnixEpoch, new ExpectedErrors(1, 0.5), new Random(1)));

        Assert.Equal(lot.Id, Assert.Single(taking.NewSamples).LotId);
        Assert.Equal(2, taking.Sessions[0].Result!.Samples.Single().Cuppers);
    }

    [Fact]
    public void A_name_of_several_lots_is_set_aside_with_its_row_and_the_others_stay()
    {
        const string points = "7.75;7.75;7.50;7.75;7.50;7.50;10;10;10;7.75;83.5";
        var table = Table(English, $"Loma Alta;{points}", $"A-2;{points}");
        var list = ResultList.From(table, HundredPoint, "panel");

        var judged = list.Without(new Dictionary<string, string> { ["Loma Alta"] = "It may be A-1 or A-9." }, table);

        Assert.Equal("A-2", Assert.Single(judged.Accepted).Name);
        var aside = Assert.Single(judged.SetAside);
        Assert.Equal((2, "It may be A-1 or A-9.", "Sample"), (aside.Row, aside.Problem.Message, aside.Problem.Column));
        Assert.Equal("Loma Alta", aside.Values[0]);
    }

    private const string English = "Sample;Aroma;Flavor;Aftertaste;Acidity;Body;Balance;Uniformity;Clean Cup;Sweetness;Overall;Total Cup Points";

    private static ResultTable Table(params string[] lines) =>
        ResultTable.Of([.. lines.Select((line, index) => new OfferLine(index + 1, [.. line.Split(';').Select(Cell.Of)]))]);
}
