using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

public sealed class CuppingCalculatorsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static readonly string[] Correlations = ["icc11", "icc21", "icc31", "icc1k", "icc2k", "icc3k"];

    private static readonly string[] PairFigures = ["difference", "low", "high"];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_100_point_sheet_is_added_up_with_each_deduction()
    {
        var reply = await PostAsync("score", """
            { "form": "100-point", "marks": { "fragrance_aroma": 7.25, "flavor": 6.75, "Aftertaste": 6.5, "acidity": 7, "body": 7, "balance": 6.75, "overall": 6.5 },
              "goodCups": { "uniformity": 4, "cleanCup": 3, "sweetness": 4 }, "deductedCups": { "taint": 1, "fault": 1 } }
            """);

        // Handbook quality.md section 1.1, worked total 4.
        Assert.Equal(63.75m, reply.GetProperty("total").GetDecimal());
        Assert.Equal(69.75m, reply.GetProperty("beforeDeductions").GetDecimal());
        Assert.Equal([2m, 4m], reply.GetProperty("deductions").EnumerateArray().Select(line => line.GetProperty("points").GetDecimal()));
        Assert.Equal("below specialty", reply.GetProperty("band").GetString());
    }

    [Fact]
    public async Task An_affective_sheet_is_rounded_to_the_quarter()
    {
        var reply = await PostAsync("score", """
            { "form": "affective", "marks": { "fragrance": 6, "aroma": 5, "flavor": 4, "aftertaste": 4, "acidity": 5, "sweetness": 5, "mouthfeel": 5, "overall": 4 },
              "deductedCups": { "nonUniform": 2, "defective": 1 } }
            """);

        // Handbook quality.md section 1.2: raw 69.6875.
        Assert.Equal(69.6875m, reply.GetProperty("unrounded").GetDecimal());
        Assert.Equal(69.75m, reply.GetProperty("total").GetDecimal());
    }

    [Theory]
    [InlineData("""{ "marks": { "flavor": 7.80 } }""", HttpStatusCode.UnprocessableEntity, "fragrance-aroma")]
    [InlineData("""{ "form": "no-such-form", "marks": {} }""", HttpStatusCode.UnprocessableEntity, "form")]
    [InlineData("""{ "marks": { "crema": 8 } }""", HttpStatusCode.UnprocessableEntity, "crema")]
    [InlineData("""{ "marks": "eight" }""", HttpStatusCode.BadRequest, "marks")]
    public async Task What_is_no_sheet_is_refused_with_its_field(string body, HttpStatusCode status, string field)
    {
        var script = await house.ScriptAsync(Role.Viewer);

        var answer = await script.PostAsync(new Uri("/api/cupping/calculate/score", UriKind.Relative), new StringContent(body, null, "application/json"), Stop);

        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var errors = (await answer.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("errors").EnumerateObject().Select(one => one.Name);
        Assert.Contains(errors, name => name.Contains(field, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task A_panel_in_long_format_gives_effects_errors_and_agreement()
    {
        string[] rows = ["P C1 84.50", "Q C1 85.50", "R C1 86.25", "S C1 83.00", "P C2 82.25", "Q C2 83.75", "T C2 84.75", "R C3 87.75", "S C3 84.50", "T C3 88.50", "P C4 83.75", "Q C4 84.50", "R C4 86.00", "T C4 86.25"];
        var sheets = string.Join(',', rows.Select(row => row.Split(' ')).Select(parts => $$"""{ "sample": "{{parts[0]}}", "cupper": "{{parts[1]}}", "score": {{parts[2]}} }"""));

        var reply = await PostAsync("panel", $$"""{ "sheets": [{{sheets}}] }""");

        // Handbook quality.md section 4.6 (R and NumPy).
        Assert.Equal([84.093414, 85.176747, 86.098057, 82.713893, 86.597324], reply.GetProperty("samples").EnumerateArray().Select(sample => Math.Round(sample.GetProperty("fitted").GetDouble(), 6)));
        Assert.Equal([0.291972, -1.705828, 1.780242, -0.366386], reply.GetProperty("cuppers").EnumerateArray().Select(cupper => Math.Round(cupper.GetProperty("effect").GetDouble(), 6)));
        Assert.Equal(0.241969, reply.GetProperty("residualDeviation").GetDouble(), 6);
        Assert.Equal(94.3284, reply.GetProperty("sampleF").GetDouble(), 4);
        Assert.Equal(0, await house.FromLedgerAsync(db => db.ScoreSheets.CountAsync(Stop)));
    }

    [Fact]
    public async Task A_replicated_panel_says_how_each_cupper_works()
    {
        string[] samples = ["84.00 84.50|82.50 83.00|85.25 85.00|83.75 84.25", "86.00 85.75|84.25 84.50|87.50 87.00|84.75 85.50", "83.25 83.00|82.75 82.25|84.00 84.75|82.00 83.00"];
        var sheets = string.Join(',', samples.SelectMany((row, sample) => row.Split('|').SelectMany((cell, cupper) =>
            cell.Split(' ').Select(score => $$"""{ "sample": "{{sample}}", "cupper": "C{{cupper + 1}}", "score": {{score}} }"""))));

        var cuppers = (await PostAsync("panel", $$"""{ "sheets": [{{sheets}}] }""")).GetProperty("cuppers").EnumerateArray().ToList();

        // Handbook quality.md section 4.4, check value 14.
        Assert.Equal([0.1944, -1.4167, 1.75, -0.5278], cuppers.Select(one => Math.Round(one.GetProperty("biasAgainstOthers").GetDouble(), 4)));
        Assert.Equal([0.25, 0.3062, 0.3819, 0.5496], cuppers.Select(one => Math.Round(one.GetProperty("repeatability").GetDouble(), 4)));
        Assert.Equal([61.1667, 22.1111, 30.5, 11.4828], cuppers.Select(one => Math.Round(one.GetProperty("discriminationF").GetDouble(), 4)));
        Assert.Equal([1.1024, 0.7044, 1.2116, 0.9678], cuppers.Select(one => Math.Round(one.GetProperty("slope").GetDouble(), 4)));
    }

    [Fact]
    public async Task Shrout_and_Fleiss_judges_agree_as_published_over_the_API()
    {
        int[][] judges = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]];
        var sheets = string.Join(',', judges.SelectMany((row, sample) => row.Select((score, judge) => $$"""{ "sample": "{{sample}}", "cupper": "{{judge}}", "score": {{score}} }""")));

        var agreement = (await PostAsync("panel", $$"""{ "sheets": [{{sheets}}] }""")).GetProperty("agreement");

        // Shrout and Fleiss 1979, six decimals from handbook quality.md section 4.1.
        Assert.Equal([0.165742, 0.289764, 0.714841, 0.442797, 0.620051, 0.909316], Correlations.Select(name => Math.Round(agreement.GetProperty(name).GetDouble(), 6)));
    }

    [Fact]
    public async Task Samples_cupped_twice_are_told_apart_by_how_far_cuppers_disagree()
    {
        // Handbook quality.md section 4.3: four cuppers, three samples, each twice.
        string[] rows = ["84.00 84.50|82.50 83.00|85.25 85.00|83.75 84.25", "86.00 85.75|84.25 84.50|87.50 87.00|84.75 85.50", "83.25 83.00|82.75 82.25|84.00 84.75|82.00 83.00"];
        var sheets = string.Join(',', rows.SelectMany((row, place) => row.Split('|').SelectMany((cell, seat) =>
            cell.Split(' ').Select(points => $$"""{ "sample": "{{"ABC"[place]}}", "cupper": "C{{seat + 1}}", "score": {{points}} }"""))));

        var reply = await PostAsync("panel", $$"""{ "sheets": [{{sheets}}] }""");

        var pairwise = reply.GetProperty("pairwise");
        var pair = pairwise.GetProperty("pairs")[0];
        Assert.Equal(("A", "B", true), (pair.GetProperty("one").GetString(), pair.GetProperty("other").GetString(), pair.GetProperty("differ").GetBoolean()));
        // Section 4.3: means 84.03125 and 85.65625; section 4.7: 4.339195 × √(0.217882 ÷ 8) = 0.7161 on the 6 degrees of freedom of the interaction.
        Assert.Equal([-1.625, -2.3411, -0.9089], PairFigures.Select(name => Math.Round(pair.GetProperty(name).GetDouble(), 4)));
        Assert.Equal(6, pairwise.GetProperty("degreesOfFreedom").GetDouble());
        // Section 4.3: error 1.8125 on 12 degrees of freedom, variance 0.151042.
        Assert.Equal((12, 0.151042), (reply.GetProperty("repeatability").GetProperty("degreesOfFreedom").GetInt32(), Math.Round(Math.Pow(reply.GetProperty("repeatability").GetProperty("deviation").GetDouble(), 2), 6)));
    }

    [Fact]
    public async Task A_cupper_may_count_less_and_the_weight_stands_in_the_answer()
    {
        const string sheets = """[{ "sample": "P", "cupper": "C1", "score": 84 }, { "sample": "P", "cupper": "C2", "score": 86 }, { "sample": "Q", "cupper": "C1", "score": 81 }, { "sample": "Q", "cupper": "C2", "score": 82.5 }]""";

        var reply = await PostAsync("panel", $$"""{ "sheets": {{sheets}}, "weights": { "C2": 0.25 } }""");

        // Worked by hand: (84 + 0.25 × 86) ÷ 1.25 and (81 + 0.25 × 82.5) ÷ 1.25.
        Assert.Equal([84.4, 81.3], reply.GetProperty("samples").EnumerateArray().Select(sample => Math.Round(sample.GetProperty("fitted").GetDouble(), 9)));
        Assert.Equal([1.0, 0.25], reply.GetProperty("cuppers").EnumerateArray().Select(cupper => cupper.GetProperty("weight").GetDouble()));
    }

    [Theory]
    [InlineData("""{ "C9": 0.5 }""", "C9")]
    [InlineData("""{ "C1": 0 }""", "above 0")]
    [InlineData("""{ "C1": 1.5 }""", "at most 1")]
    public async Task A_weight_that_is_none_is_refused(string weights, string says)
    {
        var script = await house.ScriptAsync(Role.Viewer);
        var body = $$"""{ "sheets": [{ "sample": "P", "cupper": "C1", "score": 84 }], "weights": {{weights}} }""";

        var answer = await script.PostAsync(new Uri("/api/cupping/calculate/panel", UriKind.Relative), new StringContent(body, null, "application/json"), Stop);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(says, await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task More_samples_than_anybody_compares_have_no_pairs()
    {
        var sheets = string.Join(',', Enumerable.Range(0, 61).Select(sample => $$"""{ "sample": "{{sample}}", "cupper": "C1", "score": 84 }"""));

        var reply = await PostAsync("panel", $$"""{ "sheets": [{{sheets}}] }""");

        Assert.Equal(JsonValueKind.Null, reply.GetProperty("pairwise").ValueKind);
        Assert.Equal("One cupper: there is nobody to agree with.", reply.GetProperty("agreement").GetProperty("sentence").GetString());
    }

    private async Task<JsonElement> PostAsync(string calculator, string body)
    {
        var script = await house.ScriptAsync(Role.Viewer);
        var answer = await script.PostAsync(new Uri($"/api/cupping/calculate/{calculator}", UriKind.Relative), new StringContent(body, null, "application/json"), Stop);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Stop));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }
}
