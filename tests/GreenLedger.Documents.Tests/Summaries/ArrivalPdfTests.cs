using System.Text.RegularExpressions;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Summaries;
using GreenLedger.Examples;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;

namespace GreenLedger.Documents.Tests.Summaries;

/// <summary>
/// Example G of handbook trade.md section 8 (18,975 kg shipped, 18,790 kg landed, 90.125 kg beyond the franchise, 639.09 USD), cupped
/// 1.75 points below the approved sample (seven marks a quarter point lower). Numbers and days as CLDR has them for each language.
/// </summary>
public sealed partial class ArrivalPdfTests
{
    [Theory]
    [InlineData("en", "en-GB", "What arrived", "For Cerro Alto Exports", "10 March 2026", "wet bags: 2", "94.875", "90.125 kg at 321.65 ¢/lb are worth 639.09 USD", "The arrival is short of what was agreed. Outside the limit: Moisture, % 12.6 (10.0 to 12.0).", "Both were cupped blind in one session.", "Moisture, % – 12.6 10.0 to 12.0 no", "page 1 of")]
    [InlineData("es", "es-ES", "Lo que llegó", "Para Cerro Alto Exports", "10 marzo 2026", "sacos mojados: 2", "94,875", "90,125 kg a 321,65 ¢/lb valen 639,09 USD", "La llegada queda por debajo de lo acordado. Fuera del límite: Humedad, % 12,6 (de 10,0 a 12,0).", "a ciegas en una misma sesión", "Humedad, % – 12,6 de 10,0 a 12,0 no", "página 1 de")]
    [InlineData("pt", "pt-BR", "O que chegou", "Para Cerro Alto Exports", "10 março 2026", "sacas molhadas: 2", "94,875", "90,125 kg a 321,65 ¢/lb valem 639,09 USD", "A chegada fica abaixo do que foi combinado. Fora do limite: Umidade, % 12,6 (de 10,0 a 12,0).", "às cegas em uma só sessão", "Umidade, % – 12,6 de 10,0 a 12,0 não", "página 1 de")]
    [InlineData("fr", "fr-FR", "Ce qui est arrivé", "Pour Cerro Alto Exports", "10 mars 2026", "sacs mouillés : 2", "94,875", "90,125 kg à 321,65 ¢/lb valent 639,09 USD", "L’arrivage est en dessous de ce qui a été convenu. Hors limite : Humidité, % 12,6 (de 10,0 à 12,0).", "à l’aveugle en une seule séance", "Humidité, % – 12,6 de 10,0 à 12,0 non", "page 1 sur")]
    public void Each_language_has_its_words_numbers_and_days(string language, string culture, params string[] expected)
    {
        using var pdf = Written(Report(language));

        var text = pdf.Words();

        Assert.All(expected, words => Assert.Contains(words, text, StringComparison.Ordinal));
        Assert.Contains(culture, pdf.Structure.Catalog.CatalogDictionary.Data["Lang"].ToString(), StringComparison.Ordinal);
        Assert.True(pdf.Structure.Catalog.CatalogDictionary.ContainsKey(NameToken.Create("StructTreeRoot")));
        Assert.All(pdf.GetPages().SelectMany(page => page.Letters).Select(letter => letter.FontName).Distinct(), face => Assert.Matches("^[A-Z]{6}\\+Source Sans 3", face!));
        Assert.InRange(pdf.NumberOfPages, 1, 2);
        // Both panels, the difference and the tolerance: marks of 8.00 to 8.50 are 86.00 to 89.50 points with the cups in full, 87.75 in the mean.
        Assert.Matches("PS1.*87[.,]75 3.*AR1.*86[.,]00 3.*−1[.,]75.*−1[.,]00", text);
        // Worked by hand: 185 ÷ 18,975 is 0.97497 %.
        Assert.Matches("18[.,\u202f\u00a0 ]975.*18[.,\u202f\u00a0 ]790.*185 0[.,]97", text);
    }

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    [InlineData("pt")]
    [InlineData("fr")]
    public void Nothing_is_left_unfilled_and_no_English_stays_in_another_language(string language)
    {
        var texts = new[] { Report(language), Undecided(language), Bare(language) }.Select(report =>
        {
            using var pdf = Written(report);
            return pdf.Words();
        }).ToList();

        Assert.All(texts, text => Assert.DoesNotMatch(@"\{\d\}", text));
        Assert.All(texts, text => Assert.Equal(language == "en", English().IsMatch(text)));
    }

    [Theory]
    [InlineData("en", "Undecided", "not known", "nothing shows how far those stood apart")]
    [InlineData("es", "Sin decidir", "no se sabe", "nada muestra cuánto se diferencian")]
    [InlineData("pt", "Sem decisão", "não se sabe", "nada mostra quanto elas diferem")]
    [InlineData("fr", "Non tranché", "inconnu", "rien ne montre de combien elles diffèrent")]
    public void What_nothing_decides_is_said_with_why(string language, params string[] expected)
    {
        using var pdf = Written(Undecided(language));

        Assert.All(expected, words => Assert.Contains(words, pdf.Words(), StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_not_cupped_is_said_and_a_language_without_words_is_answered_in_English()
    {
        using var bare = Written(Bare("en"));
        using var other = Written(Bare("sw"));

        Assert.Contains("Nothing was cupped or measured yet.", bare.Words(), StringComparison.Ordinal);
        Assert.Contains("What arrived", other.Words(), StringComparison.Ordinal);
    }

    private static ArrivalReport Report(string language)
    {
        var arrival = new ShortArrival();
        var grade = new GreenGrade(default, default, ShortArrival.Received, null, GreenGrade.UsualSample).Measure(Percent.Of(12.6m), null, null, null);
        var basis = arrival.Basis(grade);
        return new ArrivalReport(
            "Sorrel Roasters", "Cerro Alto Exports", language, new DateOnly(2026, 3, 21), "Imke Adler", null,
            new ArrivedGoods("CA-17", "Cerro Alto washed", "2025/26", "P26-001", "S26-001", "BL-77", "Linnet 012E", new DateOnly(2026, 2, 3), ShortArrival.Discharged, ShortArrival.Received, 275, 275, arrival.Arrival.Condition),
            basis.Weight, basis.Quality, new CuppedPair("PS1", "AR1", new DateOnly(2026, 3, 20), new DateOnly(2026, 3, 20)), ReportedLimit.Of(basis.Quality.Limits, PhysicalLimits.WashedSpecialty, null, grade));
    }

    /// <summary>In two sessions without the house reference in both: no error is known, so no bounds.</summary>
    private static ArrivalReport Undecided(string language)
    {
        var verdict = new QualityVerdict(new CupDifference(Meeting.NotHeld, 85, 84, -1, null, null, null, 3, 3, null, "Not known."), Score.Of(1m), null, null, null, null);
        return Report(language) with { Quality = new ArrivalVerdict(verdict, []), Limits = [] };
    }

    private static ArrivalReport Bare(string language) => Report(language) with { Quality = new ArrivalVerdict(null, []), Limits = [], Pair = null };

    [GeneratedRegex(@"\b(the|with|and|bags|cupped|not)\b", RegexOptions.IgnoreCase)]
    private static partial Regex English();

    private static PdfDocument Written(ArrivalReport report)
    {
        using var stream = new MemoryStream();
        ArrivalPdf.Write(report, stream);
        return PdfDocument.Open(stream.ToArray());
    }
}
