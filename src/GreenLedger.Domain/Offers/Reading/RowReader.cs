using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers.Reading.Words;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>Reads one row of a sheet by a mapping: the offer that it is, or what is wrong with it.</summary>
internal sealed class RowReader(SheetColumns columns, OfferMapping mapping, ListReference reference)
{
    private static readonly HashSet<string> NoCertificate =
        ["none", "no", "n a", "conventional", "convencional", "konventionell", "conventionnel", "keine", "ninguna", "nenhuma", "aucun", "sin", "nao"];

    private readonly ProducerKind _kindByHeading = KindOf(columns.Heading(ColumnMeaning.Producer) ?? "") ?? ProducerKind.Farm;
    private readonly PackingReader _packing = new(columns, mapping, reference.Checks);
    private readonly Remembered<ProducerKind?> _kinds = new(KindOf);
    private readonly Remembered<string?> _cropYears = new(CropYear.Read);
    private readonly Remembered<DateOnly?> _days = new(DateText.Day);
    private readonly Remembered<IReadOnlyList<string>> _schemes = new(text => [.. CertificateWords.In(text)]);

    /// <summary>The offer, or null with the problems added.</summary>
    public OfferRow? Read(OfferLine line, string? sectionCountry, RowProblems problems)
    {
        var availability = AvailabilityReader.Read(columns.Cell(line, ColumnMeaning.Availability), columns.Cell(line, ColumnMeaning.Price));
        var grade = problems.Fits(columns.Text(line, ColumnMeaning.Grade), ColumnMeaning.Grade, 80);
        var producer = ProducerText.Read(columns.Text(line, ColumnMeaning.Producer), columns.Has(ColumnMeaning.Region));
        var altitude = NumberText.ReadRange(columns.Cell(line, ColumnMeaning.Altitude), NumberRange.Altitude);
        var process = problems.Fits(columns.Text(line, ColumnMeaning.Process), ColumnMeaning.Process);
        var notes = columns.Text(line, ColumnMeaning.Notes);
        var row = new OfferRow
        {
            RowNumber = line.RowNumber,
            Ref = RefIn(line, grade, problems),
            Name = problems.Fits(columns.Text(line, ColumnMeaning.Name) ?? producer?.Name ?? "", ColumnMeaning.Name) ?? "",
            Producer = problems.Fits(producer?.Name, ColumnMeaning.Producer),
            ProducerKind = (producer is null ? null : _kinds.Of(producer.Name)) ?? _kindByHeading,
            CountryCode = CountryIn(line, sectionCountry, problems),
            Region = problems.Fits(columns.Text(line, ColumnMeaning.Region) ?? producer?.Region, ColumnMeaning.Region),
            Varieties = problems.Fits(columns.Text(line, ColumnMeaning.Varieties), ColumnMeaning.Varieties),
            Process = reference.ProcessOf(process),
            ProcessAsWritten = process,
            CropYear = CropYearIn(line, problems),
            Grade = grade ?? producer?.Grade,
            Screen = problems.Fits(columns.Text(line, ColumnMeaning.Screen), ColumnMeaning.Screen, 80),
            AltitudeFrom = Metres(altitude?.From),
            AltitudeTo = Metres(altitude?.To),
            StatedScore = ScoreIn(line, problems),
            StatedMoisture = MoistureIn(line, problems),
            Packing = _packing.Read(line, problems),
            Asking = AskingReader.Read(line, columns, mapping, availability.State, reference, problems),
            Terms = TermsIn(line, availability, problems),
            State = availability.State,
            Certificates = CertificatesIn(line, notes),
            IcoMark = problems.Fits(columns.Text(line, ColumnMeaning.IcoMark), ColumnMeaning.IcoMark, 80),
            Notes = notes is { Length: > 2000 } ? notes[..2000] : notes,
        };
        row = row with { Terms = row.Terms with { LeastBags = _packing.LeastBags(line, row.Packing, problems) } };
        RequireQuantity(row, problems);
        return problems.Any ? null : row with { Name = row.Name.Length == 0 ? row.Ref : row.Name };
    }

    private string RefIn(OfferLine line, string? grade, RowProblems problems)
    {
        var stated = columns.Has(ColumnMeaning.Ref)
            ? columns.Text(line, ColumnMeaning.Ref)
            : string.Join(' ', new[] { ColumnMeaning.Name, ColumnMeaning.Producer, ColumnMeaning.Varieties, ColumnMeaning.Process, ColumnMeaning.Grade }
                .Select(meaning => columns.Text(line, meaning)).OfType<string>());
        if (string.IsNullOrWhiteSpace(stated))
        {
            problems.Add(ColumnMeaning.Ref, "The reference is missing: type the one by which the supplier knows the lot.");
            return "";
        }

        return problems.Fits(mapping.Terms.RefWithGrade && grade is not null ? $"{stated} {grade}" : stated, ColumnMeaning.Ref) ?? "";
    }

    private string? CountryIn(OfferLine line, string? sectionCountry, RowProblems problems)
    {
        if (columns.Text(line, ColumnMeaning.Country) is not { } written)
        {
            return sectionCountry ?? mapping.Terms.CountryCode;
        }

        var code = reference.CountryOf(written);
        if (code is null)
        {
            problems.Add(ColumnMeaning.Country, $"The country '{written}' is none of the ledger's origins: correct it, or add the name under Countries.");
        }

        return code;
    }

    private string? CropYearIn(OfferLine line, RowProblems problems)
    {
        var written = columns.Text(line, ColumnMeaning.CropYear);
        return (written is null ? null : _cropYears.Of(written)) ?? problems.Fits(written, ColumnMeaning.CropYear, 20) ?? mapping.Terms.CropYear;
    }

    private Score? ScoreIn(OfferLine line, RowProblems problems)
    {
        var cell = columns.Cell(line, ColumnMeaning.StatedScore);
        if (columns.Text(line, ColumnMeaning.StatedScore) is null)
        {
            return null;
        }

        switch (NumberText.ReadRange(cell, NumberRange.Score)?.From)
        {
            case null:
                problems.Add(ColumnMeaning.StatedScore, $"The score is not a number ('{cell.Trimmed}'): type it, or leave it empty.");
                return null;
            case > 100m and var high:
                problems.Add(ColumnMeaning.StatedScore, $"The score {RowProblems.Figure(high)} is above 100: no form gives more, so correct it or leave it empty.");
                return null;
            case < 0m and var low:
                problems.Add(ColumnMeaning.StatedScore, $"The score {RowProblems.Figure(low)} is below 0: correct it or leave it empty.");
                return null;
            case var points:
                return Score.Of(points.Value);
        }
    }

    private Percent? MoistureIn(OfferLine line, RowProblems problems)
    {
        var cell = columns.Cell(line, ColumnMeaning.Moisture);
        if (columns.Text(line, ColumnMeaning.Moisture) is null)
        {
            return null;
        }

        var read = NumberText.ReadRange(cell, NumberRange.Moisture)?.To;
        var points = cell.Number is > 0m and < 1m ? read * 100m : read;
        if (points is null or < 0m or > 100m)
        {
            problems.Add(ColumnMeaning.Moisture, $"The moisture '{cell.Trimmed}' is no percentage from 0 to 100: correct it or leave it empty.");
            return null;
        }

        return Percent.Of(points.Value);
    }

    private Terms TermsIn(OfferLine line, Availability availability, RowProblems problems)
    {
        var delivery = columns.Text(line, ColumnMeaning.Incoterm) is { } rule ? TermsText.Delivery(rule.ToUpperInvariant()) ?? TermsText.Delivery(rule) : null;
        var valid = columns.Cell(line, ColumnMeaning.ValidUntil);
        return new Terms(
            delivery?.Incoterm ?? mapping.Terms.Incoterm,
            problems.Fits(columns.Text(line, ColumnMeaning.Place), ColumnMeaning.Place) ?? delivery?.Place ?? mapping.Terms.Place,
            valid.Date ?? (valid.IsEmpty ? null : _days.Of(valid.Text)) ?? mapping.Terms.ValidUntil,
            problems.Fits(availability.AsWritten, ColumnMeaning.Availability),
            availability.From);
    }

    private List<string> CertificatesIn(OfferLine line, string? notes)
    {
        var found = notes is null ? [] : _schemes.Of(notes).ToList();
        foreach (var part in columns.Text(line, ColumnMeaning.Certificates)?.Split([',', ';', '/', '+', '&'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) ?? [])
        {
            var schemes = _schemes.Of(part);
            found.AddRange(schemes.Count > 0 || NoCertificate.Contains(SearchText.Of(part)) ? schemes : [part.Length > 80 ? part[..80] : part]);
        }

        return found;
    }

    private void RequireQuantity(OfferRow row, RowProblems problems)
    {
        if (row.State == OfferState.OnOffer && !problems.Any && PackingReader.IsStated(columns) && row.Packing.Net is null or { Micrograms: 0 })
        {
            problems.Add(ColumnMeaning.Quantity, "The quantity is missing: type the bags and what a bag holds, or the net weight.");
        }
    }

    private static int? Metres(decimal? altitude) => altitude is >= 0m and <= 4000m ? decimal.ToInt32(altitude.Value) : null;

    private static ProducerKind? KindOf(string text)
    {
        var folded = SearchText.Of(text);
        return TradeWords.Has("cooperative", folded) ? ProducerKind.Cooperative
            : TradeWords.Has("station", folded) ? ProducerKind.WashingStation
            : TradeWords.Has("farm", folded) ? ProducerKind.Farm
            : null;
    }
}
