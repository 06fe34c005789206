using GreenLedger.Documents.Choosing;
using GreenLedger.Domain.Choosing;

namespace GreenLedger.Documents.Tests.Choosing;

/// <summary>The workbook is opened by LibreOffice, which has to compute every formula anew: the stored values are taken out first.</summary>
public sealed class RecalculatedWorkbookTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("greenledger-workbook-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(CostPerPointRule.PricePerPointAbove, true)]
    [InlineData(CostPerPointRule.StepUp, false)]
    public async Task Another_program_computes_the_values_that_we_stored(CostPerPointRule rule, bool inEuros)
    {
        var weights = new Weights { Score = 3m, Cost = 2m, CostPerPoint = 4m, Process = 1m };
        var terms = (inEuros ? ShortlistWorkbookTests.Euros : Demo.Rules) with { CostPerPoint = rule, Weights = weights };
        IReadOnlyList<Demo.Offered> lots = inEuros ? [Demo.Container("D", 85m), Demo.Container("E", 86m)] : Demo.RunningExample;
        var ours = Path.Combine(_folder, "ours.xlsx");
        await using (var file = File.Create(ours))
        {
            ShortlistWorkbook.Write(Demo.Report(lots, terms), file);
        }

        var theirs = await Recalculated.ByLibreOfficeAsync(_folder, ours);

        var (stored, computed) = (Recalculated.Values(ours), Recalculated.Values(theirs));
        Assert.Equal(["Shortlist", "Landed cost", "Rules", "Not ranked"], computed.Keys);
        Assert.All(stored, sheet => Assert.Equal(sheet.Value, computed[sheet.Key]));
        Assert.DoesNotContain(computed.SelectMany(sheet => sheet.Value), value => value.StartsWith('#'));
    }
}
