using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Demo;

/// <summary>What a ledger says, without the identities that every run draws anew.</summary>
internal static class Written
{
    public static async Task<IReadOnlyList<string>> OfAsync(LedgerContext db)
    {
        var token = TestContext.Current.CancellationToken;
        var lots = await db.Lots.AsNoTracking().ToDictionaryAsync(lot => lot.Id, token);
        var people = await db.People.AsNoTracking().ToDictionaryAsync(person => person.Id, token);
        var samples = await db.Samples.AsNoTracking().ToDictionaryAsync(sample => sample.Id, token);
        var offers = await db.Offers.AsNoTracking().Include(offer => offer.Prices).ToListAsync(token);
        var grades = await db.GreenGrades.AsNoTracking().ToListAsync(token);
        var sheets = await db.ScoreSheets.AsNoTracking().ToListAsync(token);
        var results = await db.SampleResults.AsNoTracking().ToListAsync(token);
        var lists = await db.OfferLists.AsNoTracking().Include(list => list.SetAside).ToListAsync(token);
        var decisions = await db.Decisions.AsNoTracking().ToListAsync(token);
        var notes = await db.Notes.AsNoTracking().ToListAsync(token);
        return
        [
            .. lots.Values.Select(lot => $"lot {lot.Ref} {lot.Name} {lot.CountryCode} {lot.Region} {lot.CropYear} {lot.Grade} {lot.Screen} {lot.Bags} {string.Join('+', lot.Certificates)}").Order(),
            .. offers.SelectMany(offer => offer.Prices.Select(price => $"price {offer.Ref} {price.On} {price.Price} {price.Differential} {price.Quantity} {price.State}")).Order(),
            .. grades.Select(grade => $"grade {samples[grade.SampleId].LabelCode} {grade.Moisture} {grade.WaterActivity} {grade.Category1} {grade.Category2} {people[grade.By!.Value].Name}").Order(),
            .. sheets.Select(sheet => $"sheet {samples[sheet.SampleId].LabelCode} {sheet.CupperName} {sheet.Unrounded} {string.Join('+', sheet.Descriptors)} {sheet.Note}").Order(),
            .. results.Select(result => $"result {lots[result.LotId].Ref} {result.Fitted} {result.Low} {result.High}").Order(),
            .. lists.Select(list => $"list {list.FileName} {list.Accepted} {list.Revised} {list.Unchanged} {string.Join('+', list.SetAside.OrderBy(row => row.RowNumber).Select(row => row.Reason))}").Order(),
            .. decisions.Select(decision => $"decision {decision.At:O} {lots[decision.LotId].Ref} {decision.Outcome} {decision.Quantity} {decision.Advised} {decision.Reason} {decision.Note} {decision.WithdrawnBecause}").Order(),
            .. notes.Select(note => $"note {note.At:O} {note.About} {note.Text}").Order(),
        ];
    }

    /// <summary>The rows of every table.</summary>
    public static async Task<IReadOnlyDictionary<string, long>> RowsAsync(LedgerContext db)
    {
        var rows = new SortedDictionary<string, long>();
        foreach (var table in db.Model.GetEntityTypes().Select(type => type.GetTableName()).OfType<string>().Distinct())
        {
            var count = "SELECT COUNT(*) AS \"Value\" FROM \"" + table + "\"";
            rows[table] = await db.Database.SqlQueryRaw<long>(count).SingleAsync(TestContext.Current.CancellationToken);
        }

        return rows;
    }
}
