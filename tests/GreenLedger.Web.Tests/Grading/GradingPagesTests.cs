using System.Net;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Grading;

public sealed class GradingPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_graded_sample_is_held_against_the_published_limits_on_its_page()
    {
        await SampleAsync("GRADED", "Caturra");
        var cupper = await house.BrowserAsync(Role.Cupper);

        var answer = await cupper.SendFormAsync("/Grading/New", new Dictionary<string, string>
        {
            ["Input.Label"] = "graded",
            ["Input.MoisturePercent"] = "12.6",
            ["Input.ExportDefects"] = "87",
            ["Input.Beans[partial-black]"] = "5",
            ["Input.Beans[broken]"] = "14",
            ["Input.Beans[shell]"] = "4",
            ["Input.Beans[slight-insect]"] = "19",
        });

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var grade = await house.FromLedgerAsync(db => db.GreenGrades.Whole().OrderByDescending(one => one.Id).FirstAsync(Stop));
        // Handbook quality.md section 9, check value 5: 4 full defects, none of category 1.
        Assert.Equal((FullDefects.Of(0m), FullDefects.Of(4m)), (grade.Category1!.Value, grade.Category2!.Value));
        var page = await cupper.ReadAsync(answer.Headers.Location!.OriginalString);
        var export = page.QuerySelectorAll("h2").Single(head => head.TextContent.Contains("arabica (ICO", StringComparison.Ordinal)).NextElementSibling!;
        // Check value 7: 87 defects and 12.6 % both fail.
        Assert.Equal(["failed", "failed"], export.QuerySelectorAll(".tag").Select(tag => tag.TextContent));
    }

    [Theory]
    [InlineData("Input.Screens[16]", "60", "add up to 60 %")]
    [InlineData("Input.Beans[broken]", "-1", "negative")]
    [InlineData("Input.MoisturePercent", "0", "Moisture lies above 0 %")]
    [InlineData("Input.WaterActivity", "1.2", "Water activity lies between 0 and 1: write 0.58, not 58.")]
    [InlineData("Input.Label", "NOSUCH", "No sample here has the label code NOSUCH")]
    public async Task A_figure_that_cannot_be_is_refused_and_everything_typed_is_kept(string field, string typed, string sentence)
    {
        await SampleAsync("TYPED", "Caturra");
        var before = await house.FromLedgerAsync(db => db.GreenGrades.CountAsync(Stop));
        var cupper = await house.BrowserAsync(Role.Cupper);
        var fields = new Dictionary<string, string> { ["Input.Label"] = "TYPED", ["Input.MoistureMethod"] = "hand-held meter", ["Input.Beans[shell]"] = "7", ["Input.Note"] = "seen by daylight", [field] = typed };

        var answer = await cupper.SendFormAsync("/Grading/New", fields);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var page = await TestBrowser.PageAsync(answer);
        Assert.Contains(sentence, page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(typed, page.QuerySelector($"[name='{field}']")!.GetAttribute("value"));
        Assert.Equal("7", page.QuerySelector("#beans-shell")!.GetAttribute("value"));
        Assert.Equal("hand-held meter", page.QuerySelector("#Input_MoistureMethod")!.GetAttribute("value"));
        Assert.Equal("seen by daylight", page.QuerySelector("#Input_Note")!.TextContent.Trim());
        Assert.Equal(before, await house.FromLedgerAsync(db => db.GreenGrades.CountAsync(Stop)));
    }

    [Fact]
    public async Task A_corrected_grade_shows_what_stood_before_in_its_history()
    {
        await SampleAsync("AGAIN", "Caturra");
        var cupper = await house.BrowserAsync(Role.Cupper);
        var written = await cupper.SendFormAsync("/Grading/New", new Dictionary<string, string>
        {
            ["Input.Label"] = "AGAIN",
            ["Input.MoisturePercent"] = "10.8",
            ["Input.Beans[broken]"] = "14",
            ["Input.Beans[shell]"] = "4",
            ["Input.Screens[16]"] = "60",
            ["Input.Screens[15]"] = "40",
        });
        var id = written.Headers.Location!.OriginalString.Split('/')[^1];

        var answer = await cupper.SendFormAsync($"/Grading/Correct/{id}", new Dictionary<string, string>
        {
            ["Input.MoisturePercent"] = "11.2",
            ["Input.Beans[broken]"] = "24",
            ["Input.Beans[shell]"] = "",
            ["Input.Beans[full-black]"] = "1",
            ["Input.Screens[16]"] = "70",
            ["Input.Screens[15]"] = "30",
        });

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var grade = await house.FromLedgerAsync(db => db.GreenGrades.AsNoTracking().Whole().SingleAsync(one => one.Id == Id<GreenGrade>.Parse(id, null), Stop));
        // Handbook quality.md section 2.1: 24 broken are 4 full defects of 5 beans, one full black is one of category 1.
        Assert.Equal((11.2m, FullDefects.Of(1m), FullDefects.Of(4m)), (grade.Moisture!.Value.Points, grade.Category1!.Value, grade.Category2!.Value));
        Assert.Equal(["broken 24", "full-black 1"], grade.Defects.Select(count => $"{count.Kind} {count.Beans}").Order());
        Assert.Equal([70m, 30m], grade.Screens.Select(share => share.Retained.Points));
        var history = (await cupper.ReadAsync($"/Grading/Grade/{id}")).QuerySelector(".history")!.TextContent;
        Assert.All(["10.8", "11.2", "defect count broken", "screen share 16"], told => Assert.Contains(told, history, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task Who_corrects_a_grade_that_somebody_corrected_meanwhile_sees_both()
    {
        await SampleAsync("BOTH", "Caturra");
        var cupper = await house.BrowserAsync(Role.Cupper);
        var written = await cupper.SendFormAsync("/Grading/New", new Dictionary<string, string> { ["Input.Label"] = "BOTH", ["Input.MoisturePercent"] = "10.8" });
        var id = written.Headers.Location!.OriginalString.Split('/')[^1];
        await cupper.SendFormAsync($"/Grading/Correct/{id}", new Dictionary<string, string> { ["Input.MoisturePercent"] = "11.0" });

        var answer = await cupper.SendFormAsync($"/Grading/Correct/{id}", new Dictionary<string, string> { ["Input.Version"] = "0", ["Input.MoisturePercent"] = "11.4" });

        var page = await TestBrowser.PageAsync(answer);
        Assert.Contains("Somebody saved this record", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("11.4", page.QuerySelector("#Input_MoisturePercent")!.GetAttribute("value"));
        Assert.Equal(11m, (await house.FromLedgerAsync(db => db.GreenGrades.AsNoTracking().SingleAsync(one => one.Id == Id<GreenGrade>.Parse(id, null), Stop))).Moisture!.Value.Points);
    }

    [Fact]
    public async Task The_class_and_the_limits_are_worked_out_while_one_types_and_nothing_is_stored()
    {
        await SampleAsync("LIVE", "Caturra");
        var before = await house.FromLedgerAsync(db => db.GreenGrades.CountAsync(Stop));
        var cupper = await house.BrowserAsync(Role.Cupper);

        var form = await cupper.ReadAsync("/Grading/New");
        var page = await cupper.ReadAsync("/Grading/Verdict?Input.Label=LIVE&Input.SampleWeightGrams=350&Input.Beans[broken]=30&Input.Screens[17]=60&Input.Screens[16]=30&Input.HasForeignOdour=false&Input.MoisturePercent=");

        Assert.Equal("/Grading/Verdict", form.QuerySelector("form[method=post][hx-get]")!.GetAttribute("hx-get"));
        var verdict = page.QuerySelector("#verdict")!.TextContent;
        // Handbook quality.md section 2.1: 30 broken are 6 full defects of category 2, which is more than 5.
        Assert.Contains("below specialty, since 6 of category 2, at most 5", verdict, StringComparison.Ordinal);
        Assert.Contains("The screens add up to 90 %: they must add up to 100 %", verdict, StringComparison.Ordinal);
        Assert.Equal(before, await house.FromLedgerAsync(db => db.GreenGrades.CountAsync(Stop)));
    }

    [Fact]
    public async Task A_robusta_is_counted_by_its_own_table_and_the_answers_stay_on_the_grade()
    {
        await SampleAsync("ROBUST", "Robusta");
        var cupper = await house.BrowserAsync(Role.Cupper);
        await house.InLedgerAsync(db => db.Lots.Where(lot => lot.Ref == "G-ROBUST").ExecuteUpdateAsync(set => set.SetProperty(lot => lot.Varieties, "Robusta"), Stop));
        var sample = await house.FromLedgerAsync(db => db.Samples.SingleAsync(one => one.LabelCode == "ROBUST", Stop));

        var answer = await cupper.SendFormAsync($"/Grading/New?sample={sample.Id}", new Dictionary<string, string> { ["Input.Beans[chalky-white]"] = "30", ["Input.Colour"] = "greenish" });

        var page = await cupper.ReadAsync(answer.Headers.Location!.OriginalString);
        Assert.Contains("Class: premium, since 6 of category 2, at most 5", page.QuerySelector(".class-line")!.TextContent, StringComparison.Ordinal);
        var stored = await house.FromLedgerAsync(db => db.GreenGrades.Whole().SingleAsync(grade => grade.SampleId == sample.Id, Stop));
        Assert.Equal(("premium", "fine-robusta", "greenish"), (stored.QualityClass, stored.Scheme, stored.Colour));
        Assert.Contains(stored.Limits, limit => limit is { Limits: "Fine robusta", Name: "Category 2 full defects", Found: "6", Passed: false });
    }

    private async Task SampleAsync(string label, string varieties)
    {
        await house.OpenHouseAsync();
        await house.InLedgerAsync(async db =>
        {
            if (!await db.Samples.AnyAsync(sample => sample.LabelCode == label, Stop))
            {
                var lot = new Lot("G-" + label, "Encosta do Sol " + varieties);
                db.AddRange(lot, new Sample(lot.Id, SampleKind.Offer, label, new DateOnly(2026, 11, 20), Weight.FromGrams(500m)));
                await db.SaveChangesAsync(Stop);
            }
        });
    }
}
