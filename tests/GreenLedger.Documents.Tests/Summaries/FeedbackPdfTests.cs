using GreenLedger.Documents.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Summaries;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;

namespace GreenLedger.Documents.Tests.Summaries;

/// <summary>Numbers and days as CLDR has them for each language: 86.25, 86,25; 4 May 2026, 4 mai 2026.</summary>
public sealed class FeedbackPdfTests
{
    [Theory]
    [InlineData("en", "en-GB", "What we tasted", "86.25 points", "4 May 2026", "Full defects, category 2 3.40", "stands in the upper quarter", "a score of at least 87.00 points", "Pick ripe cherries only", "page 1 of")]
    [InlineData("es", "es-ES", "Lo que catamos", "86,25 puntos", "4 mayo 2026", "Defectos completos, categoría 2 3,40", "se sitúa en el cuarto superior", "un puntaje de al menos 87,00 puntos", "Cosechar solo cerezas maduras", "página 1 de")]
    [InlineData("pt", "pt-BR", "O que provamos", "86,25 pontos", "4 maio 2026", "Defeitos completos, categoria 2 3,40", "se situa no quarto superior", "uma pontuação de pelo menos 87,00 pontos", "Colher só cerejas maduras", "página 1 de")]
    [InlineData("fr", "fr-FR", "Ce que nous avons dégusté", "86,25 points", "4 mai 2026", "Défauts entiers, catégorie 2 3,40", "se situe dans le quart supérieur", "une note d’au moins 87,00 points", "Ne cueillir que des cerises mûres", "page 1 sur")]
    public void Each_language_has_its_words_numbers_and_days(string language, string culture, params string[] expected)
    {
        using var pdf = Written(Report(language));

        var text = pdf.Words();

        Assert.All(expected, words => Assert.Contains(words, text, StringComparison.Ordinal));
        Assert.Contains(culture, pdf.Structure.Catalog.CatalogDictionary.Data["Lang"].ToString(), StringComparison.Ordinal);
        Assert.True(pdf.Structure.Catalog.CatalogDictionary.ContainsKey(NameToken.Create("StructTreeRoot")));
        Assert.All(pdf.GetPages().SelectMany(page => page.Letters).Select(letter => letter.FontName).Distinct(), face => Assert.Matches("^[A-Z]{6}\\+Source Sans 3", face!));
    }

    [Fact]
    public void The_highest_cost_of_the_house_is_not_told()
    {
        using var pdf = Written(Report("en"));

        Assert.Contains("a lower price", pdf.Words(), StringComparison.Ordinal);
        Assert.DoesNotContain("11.37", pdf.Words(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_not_cupped_graded_or_decided_is_said_and_not_left_out()
    {
        var bare = Sample() with { Cup = null, Green = null, Decision = null, Quarter = null };

        using var pdf = Written(Report("en") with { Samples = [bare] });

        string[] said = ["Not cupped yet.", "Not graded yet.", "We have not decided yet."];
        Assert.All(said, words => Assert.Contains(words, pdf.Words(), StringComparison.Ordinal));
    }

    [Fact]
    public void A_language_without_words_is_answered_in_English()
    {
        using var pdf = Written(Report("sw"));

        Assert.Contains("What we tasted", pdf.Words(), StringComparison.Ordinal);
    }

    private static FeedbackReport Report(string language) => new("Harbour & Hill Roasters", "Cooperativa São João", language, new DateOnly(2026, 11, 25), "Ana Ruiz", null, [Sample()]);

    private static FeedbackSample Sample()
    {
        var id = Id<Sample>.New();
        string[] keys = ["fragrance-aroma", "flavor", "aftertaste", "acidity", "body", "balance", "overall"];
        var profile = new SampleProfile(
            id, 3, 3, [.. keys.Select((key, at) => new AttributeProfile(FormLine.Scale(key, key, 6m, 10m, 0.25m), 7.5m + at * 0.125m, 7m, 8.5m))],
            [new SaidWord("jasmine", 3), new SaidWord("peach", 2)], [], []);
        return new FeedbackSample(
            id, "CA-17", "Cerro Alto washed", "2026/27", "QX7", SampleKind.Offer, new DateOnly(2026, 4, 20),
            new FeedbackCup(new DateOnly(2026, 5, 4), "100-point form", Score.Of(86.25m), Score.Of(85.5m), Score.Of(87m), profile),
            new FeedbackGreen(new DateOnly(2026, 4, 22), GreenGrade.UsualSample, Percent.Of(11.2m), WaterActivity.Of(0.56m), 702, FullDefects.Of(0m), FullDefects.Of(3.4m), 1, [("immature", "Immature or unripe", 12), ("broken", "Broken", 5)]),
            new FeedbackDecision(new DateOnly(2026, 5, 6), Outcome.Decline, Gate.LeastScore | Gate.HighestCost, new Gates { LeastScore = Score.Of(87m), HighestCostPerKilogram = 11.37m }),
            SeasonQuarter.Upper);
    }

    private static PdfDocument Written(FeedbackReport report)
    {
        var stream = new MemoryStream();
        FeedbackPdf.Write(report, stream);
        return PdfDocument.Open(stream.ToArray());
    }
}
