using System.Data;
using System.IO.Compression;
using System.Text.RegularExpressions;
using ExcelDataReader;
using GreenLedger.Documents.Choosing;
using GreenLedger.Domain.Choosing;

namespace GreenLedger.Documents.Tests.Choosing;

/// <summary>The workbook is opened by LibreOffice, which has to compute every formula anew: the stored values are taken out first.</summary>
public sealed partial class RecalculatedWorkbookTests : IDisposable
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

        var theirs = await RecalculatedAsync(ours);

        var (stored, computed) = (Values(ours), Values(theirs));
        Assert.Equal(["Shortlist", "Landed cost", "Rules", "Not ranked"], computed.Keys);
        Assert.All(stored, sheet => Assert.Equal(sheet.Value, computed[sheet.Key]));
        Assert.DoesNotContain(computed.SelectMany(sheet => sheet.Value), value => value.StartsWith('#'));
    }

    private async Task<string> RecalculatedAsync(string ours)
    {
        var bare = Path.Combine(_folder, "bare.xlsx");
        File.Copy(ours, bare);
        Assert.True(TakeOutValues(bare) > 20);
        var result = Path.Combine(_folder, "result");
        await InstalledProgram.RunAsync(
            "soffice", "libreoffice-calc-nogui", $"-env:UserInstallation=file://{_folder}/profile", "--headless", "--convert-to", "xlsx", "--outdir", result, bare);
        return Path.Combine(result, "bare.xlsx");
    }

    /// <summary>Removes the stored value beside each formula; how many there were.</summary>
    private static int TakeOutValues(string file)
    {
        using var archive = ZipFile.Open(file, ZipArchiveMode.Update);
        var count = 0;
        foreach (var sheet in archive.Entries.Where(entry => entry.FullName.StartsWith("xl/worksheets/", StringComparison.Ordinal)).ToList())
        {
            using var stream = sheet.Open();
            var text = new StreamReader(stream).ReadToEnd();
            count += StoredValue().Count(text);
            stream.SetLength(0);
            using var writer = new StreamWriter(stream);
            writer.Write(StoredValue().Replace(text, "$1"));
        }

        return count;
    }

    /// <summary>Every cell's value as text, numbers to nine significant digits.</summary>
    private static Dictionary<string, List<string>> Values(string file)
    {
        System.Text.Encoding.RegisterProvider(System.Text.CodePagesEncodingProvider.Instance);
        using var reader = ExcelReaderFactory.CreateReader(File.OpenRead(file));
        var sheets = new Dictionary<string, List<string>>();
        do
        {
            var values = sheets[reader.Name] = [];
            while (reader.Read())
            {
                values.AddRange(Enumerable.Range(0, reader.FieldCount).Select(i => Text(reader.GetValue(i))).Where(text => text.Length > 0));
            }
        }
        while (reader.NextResult());
        return sheets;
    }

    private static string Text(object? value) =>
        value is double number ? number.ToString("G9", System.Globalization.CultureInfo.InvariantCulture) : $"{value}";

    [GeneratedRegex("(</(?:x:)?f>)<(?:x:)?v>[^<]*</(?:x:)?v>")]
    private static partial Regex StoredValue();
}
