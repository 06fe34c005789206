using System.Globalization;
using SpreadCheetah;

namespace GreenLedger.Benchmarks.Offers;

/// <summary>A workbook with a row for each lot, as an importer's stock list of a hundred houses would be.</summary>
internal static class LongList
{
    private static readonly string[] Heads =
    [
        "Lot no", "Lot name", "Origin", "Producer", "Region", "Altitude", "Variety", "Process", "Crop", "Grade", "Bags", "kg/bag", "Cup score", "Certificates", "Price USD/lb", "Available",
    ];

    private static readonly (string Country, string Region)[] Origins = [("Brazil", "Cerrado"), ("Colombia", "Huila"), ("Ethiopia", "Guji"), ("Kenya", "Nyeri"), ("Peru", "Cusco")];

    private static readonly string[] Processes = ["washed", "natural", "honey", "anaerobic natural"];

    public static async Task<Dictionary<string, double>> WriteAsync(string file)
    {
        var random = new Random(17);
        await using var stream = File.Create(file);
        await using var workbook = await Spreadsheet.CreateNewAsync(stream);
        await workbook.StartWorksheetAsync("Offers");
        await workbook.AddRowAsync([new DataCell("Long Quay Traders")]);
        await workbook.AddRowAsync([new DataCell("FOB Santos, valid until 31/01/2027")]);
        await workbook.AddRowAsync(Heads.Select(head => new DataCell(head)).ToArray());
        for (var number = 1; number <= Sizes.Rows; number++)
        {
            await workbook.AddRowAsync(Row(number, random));
        }

        await workbook.FinishAsync();
        return new() { ["bytes"] = new FileInfo(file).Length };
    }

    private static DataCell[] Row(int number, Random random)
    {
        var (country, region) = Origins[random.Next(Origins.Length)];
        return
        [
            new(string.Create(CultureInfo.InvariantCulture, $"LQ-{number:000000}")), new($"Parcel {number}"), new(country), new($"Farm {number % 900}"), new(region),
            new(1100 + (random.Next(18) * 50)), new("Caturra, Bourbon"), new(Processes[random.Next(Processes.Length)]), new("2025/26"), new("Grade 1"),
            new(random.Next(5, 320)), new(60), new(80 + (random.Next(36) / 4m)), new(random.Next(5) == 0 ? "organic" : null), new(2.8m + (random.Next(1600) / 400m)), new(random.Next(20) == 0 ? "sold" : null),
        ];
    }
}
