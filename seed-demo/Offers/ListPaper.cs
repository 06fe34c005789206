using System.Globalization;
using System.Text;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using SpreadCheetah;

namespace GreenLedger.SeedDemo.Offers;

/// <summary>A list as its seller sends it: a workbook or a text table, in its own language, with titles and a footer.</summary>
internal sealed class ListPaper
{
    /// <summary>Who sends text tables; the others send workbooks.</summary>
    private static readonly HashSet<string> TextSenders = ["CLT", "AH", "KE", "MC", "RS", "HH"];

    private readonly Seller _seller;
    private readonly ListWords _words;
    private readonly List<Column> _columns;
    private readonly IReadOnlyDictionary<string, Country> _countries;

    public ListPaper(Seller seller, IReadOnlyDictionary<string, Country> countries)
    {
        _seller = seller;
        _words = ListWords.Of(seller.Language);
        _countries = countries;
        _columns = [.. Columns()];
    }

    private bool IsText => TextSenders.Contains(_seller.Prefix);

    private bool IsSpot => _seller.Delivery == Incoterm.ExWarehouse;

    /// <param name="slips">Cells that the seller got wrong.</param>
    public async Task<(string Name, byte[] Bytes)> WriteAsync(SellersList list, IReadOnlyList<Slip> slips)
    {
        var rows = list.Rows.SelectMany((row, at) => Cells(row, slips.FirstOrDefault(slip => slip.Row == at))).ToList();
        var name = $"{SearchText.Of(_seller.Name).Replace(' ', '-')}-{list.On:yyyy-MM-dd}";
        return IsText
            ? ($"{name}.{(_seller.Prefix == "KE" ? "tsv" : "csv")}", TextTable(list, rows))
            : ($"{name}.xlsx", await WorkbookAsync(list, rows));
    }

    private IEnumerable<object?[]> Cells(Listed row, Slip? slip)
    {
        object?[] cells = [.. _columns.Select(column => column.Value(row))];
        if (slip?.Kind == SlipKind.Twice)
        {
            yield return [.. cells];
        }

        if (slip is { Kind: not SlipKind.Twice })
        {
            var (heading, wrong) = slip.Kind switch
            {
                SlipKind.NoPrice => (PriceHeading, _words.Unpriced),
                SlipKind.Score => (_words.Score, 100m + (row.StatedScore?.Points ?? 85m)),
                SlipKind.Bags => (_words.Bags, -row.Bags),
                _ => (_words.BagWeight, (object)(row.Coffee.BagKg * 10)),
            };
            cells[_columns.FindIndex(column => column.Heading == heading)] = wrong;
        }

        yield return cells;
    }

    private string PriceHeading => _seller.Quoting switch
    {
        { Against: FuturesMarket.Arabica } => $"{_words.Differential} US¢/lb",
        { Against: FuturesMarket.Robusta } => $"{_words.Differential} USD/t",
        var quoting => $"{_words.Price} {quoting.Currency}/{quoting.Unit.Sign()}",
    };

    private IEnumerable<Column> Columns()
    {
        yield return new Column(_words.Ref, row => row.Coffee.Ref);
        yield return new Column(_words.Name, row => row.Coffee.Name);
        if (_seller.Origins.Count > 1)
        {
            yield return new Column(_words.Country, row => _countries[row.Coffee.Origin.Code].Name);
        }

        yield return new Column(_words.Producer, row => row.Coffee.Grower.Producer.Name);
        yield return new Column(_words.Region, row => row.Coffee.Grower.Producer.Region);
        yield return new Column(_words.Altitude, row => Altitude(row.Coffee.Grower.Producer));
        yield return new Column(_words.Variety, row => row.Coffee.Variety);
        yield return new Column(_words.Process, row => _words.ProcessWord(row.Coffee.Process));
        yield return new Column(_words.Crop, row => row.Coffee.CropYear);
        yield return new Column(_words.Grade, row => row.Coffee.IsScreen ? null : row.Coffee.Grade);
        yield return new Column(_words.Screen, row => row.Coffee.IsScreen ? row.Coffee.Grade["screen ".Length..] : null);
        yield return new Column(_words.Bags, row => (decimal)row.Bags);
        yield return new Column(_words.BagWeight, row => row.Coffee.BagKg);
        yield return new Column(_words.Score, row => row.StatedScore?.Points);
        yield return new Column(_words.Certificates, row => string.Join(", ", row.Coffee.Certificates));
        if (_seller.Quoting.Against is not null)
        {
            yield return new Column(_words.Month, row => row.Asking.Differential!.Value.Month.ToString());
        }

        yield return new Column(PriceHeading, row => row.Asking.Price?.Amount ?? row.Asking.Differential!.Value.Quoted);
        if (IsSpot)
        {
            yield return new Column(_words.Place, _ => _seller.Place);
        }

        yield return new Column(_words.Available, row => row.State == OfferState.Sold ? _words.Sold : null);
    }

    private List<string> Titles(SellersList list)
    {
        var rule = IsSpot ? "Spot" : $"{_seller.Delivery.Word()} {_seller.Place}";
        var origin = _seller.Origins.Count == 1 ? " - " + _countries[_seller.Origins[0]].Name : "";
        return [$"{_seller.Name}{origin}", $"{rule}, {_words.ValidUntil} {list.ValidUntil.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture)}"];
    }

    private async Task<byte[]> WorkbookAsync(SellersList list, List<object?[]> rows)
    {
        using var stream = new MemoryStream();
        await using var workbook = await Spreadsheet.CreateNewAsync(stream);
        await workbook.StartWorksheetAsync(list.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        foreach (var title in Titles(list))
        {
            await workbook.AddRowAsync([new DataCell(title)]);
        }

        await workbook.AddRowAsync([]);
        await workbook.AddRowAsync(_columns.Select(column => new DataCell(column.Heading)).ToArray());
        foreach (var row in rows)
        {
            await workbook.AddRowAsync(row.Select(Cell).ToArray());
        }

        await workbook.AddRowAsync([]);
        await workbook.AddRowAsync([new DataCell(_words.Footer)]);
        await workbook.FinishAsync();
        return stream.ToArray();
    }

    private static DataCell Cell(object? value) => value switch
    {
        decimal number => new DataCell(number),
        int count => new DataCell(count),
        _ => new DataCell(value as string),
    };

    /// <summary>German and Portuguese senders write Windows-1252, whose letters that they use are those of Latin-1.</summary>
    private byte[] TextTable(SellersList list, List<object?[]> rows)
    {
        var isEnglish = _seller.Language == "en";
        var sign = _seller.Prefix == "KE" ? '\t' : isEnglish ? ',' : ';';
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = isEnglish ? "." : ",";
        var lines = Titles(list).Select(title => Quoted(title, sign))
            .Append("")
            .Append(string.Join(sign, _columns.Select(column => column.Heading)))
            .Concat(rows.Select(row => string.Join(sign, row.Select(value => Quoted(Convert.ToString(value, culture) ?? "", sign)))))
            .Append("")
            .Append(Quoted(_words.Footer, sign));
        var encoding = _seller.Language is "de" or "pt" ? Encoding.Latin1 : new UTF8Encoding(encoderShouldEmitUTF8Identifier: true);
        return [.. encoding.GetPreamble(), .. encoding.GetBytes(string.Join("\r\n", lines))];
    }

    private static string Quoted(string text, char sign) => text.Contains(sign, StringComparison.Ordinal) ? $"\"{text}\"" : text;

    private static string? Altitude(Producer producer) =>
        producer.AltitudeTo is { } highest ? $"{producer.AltitudeFrom}-{highest}" : producer.AltitudeFrom?.ToString(CultureInfo.InvariantCulture);

    private sealed record Column(string Heading, Func<Listed, object?> Value);
}
