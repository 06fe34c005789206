using System.Text;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock.Reading;

namespace GreenLedger.Documents.Tests.Offers;

/// <summary>A list of contracts as LibreOffice writes it: figures and days are cells of their own kind there.</summary>
public sealed class HouseTableTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("greenledger-table-").FullName;

    [Theory]
    [InlineData("xlsx", "xlsx")]
    [InlineData("csv", "csv:Text - txt - csv (StarCalc):59,34,76")]
    public async Task Earlier_contracts_are_read_from_what_libre_office_writes(string kind, string filter)
    {
        var ours = Path.Combine(_folder, "contracts.csv");
        await File.WriteAllTextAsync(
            ours,
            "Contract,Supplier,Contract date,Lot,Bags,Bag weight (kg),Incoterm,Place,Shipment until,Futures month,Differential,Lots fixed,Fixed at,Fixed on\n"
            + "P25-1,Serra do Mel,2026-08-03,SM-1,640,59.5,FOB,Santos,2026-12-31,KCH27,-4.5,1,281.4,2026-09-14\n",
            Encoding.UTF8, TestContext.Current.CancellationToken);
        var result = Path.Combine(_folder, "result");
        await InstalledProgram.RunAsync(
            "soffice", "libreoffice-calc-nogui", $"-env:UserInstallation=file://{_folder}/profile", "--headless", "--infilter=CSV:44,34,76,1", "--convert-to", filter, "--outdir", result, ours);

        var lines = HouseTable.Read(await File.ReadAllBytesAsync(Path.Combine(result, $"contracts.{kind}"), TestContext.Current.CancellationToken));
        var entry = Assert.Single(EarlierList.Of(lines, Currency.Eur, new DateOnly(2026, 11, 26)).Entries);

        Assert.Equal((new DateOnly(2026, 8, 3), "KCH27", -4.5m, Caller.Buyer), (entry.Terms.SignedOn, entry.Terms.Month.ToString(), entry.Terms.Differential, entry.Terms.Call));
        Assert.Equal(new EarlierFixing(1, 281.4m, new DateOnly(2026, 9, 14)), Assert.Single(entry.Terms.Fixings));
        Assert.Equal((640, Weight.FromKilograms(59.5m)), (entry.Rows[0].Bags, entry.Rows[0].BagWeight));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
