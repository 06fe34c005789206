using System.IO.Compression;
using System.Text.RegularExpressions;
using ClosedXML.Excel;
using ExcelDataReader;

namespace GreenLedger.Documents.Tests;

/// <summary>A workbook computed anew by LibreOffice from its formulas alone: the stored values are taken out first.</summary>
internal static partial class Recalculated
{
    /// <summary>The file that LibreOffice wrote, perhaps after cells were changed.</summary>
    public static async Task<string> ByLibreOfficeAsync(string folder, string ours, Action<XLWorkbook>? change = null)
    {
        var bare = Path.Combine(folder, "bare.xlsx");
        File.Copy(ours, bare, overwrite: true);
        if (change is not null)
        {
            using var book = new XLWorkbook(bare);
            change(book);
            book.SaveAs(bare, new SaveOptions { EvaluateFormulasBeforeSaving = false });
        }

        Assert.True(TakeOutValues(bare) > 20 || change is not null);
        var result = Path.Combine(folder, "result");
        await InstalledProgram.RunAsync(
            "soffice", "libreoffice-calc-nogui", $"-env:UserInstallation=file://{folder}/profile", "--headless", "--convert-to", "xlsx", "--outdir", result, bare);
        return Path.Combine(result, "bare.xlsx");
    }

    /// <summary>Every cell's value as text, numbers to nine significant digits, sheet by sheet.</summary>
    public static Dictionary<string, List<string>> Values(string file)
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

    private static string Text(object? value) =>
        value is double number ? number.ToString("G9", System.Globalization.CultureInfo.InvariantCulture) : $"{value}";

    [GeneratedRegex("(</(?:x:)?f>)<(?:x:)?v>[^<]*</(?:x:)?v>")]
    private static partial Regex StoredValue();
}
