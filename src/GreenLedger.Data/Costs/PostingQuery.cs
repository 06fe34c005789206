using GreenLedger.Domain;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Costs;

/// <summary>A posting of a list, with what it stands on by name.</summary>
public sealed record PostingRow(CostPosting Posting, string On, string Who);

/// <summary>Lists of postings.</summary>
public sealed class PostingQuery(LedgerContext db)
{
    public Task<int> CountAsync(string? text, CancellationToken cancellationToken) => Holding(text).CountAsync(cancellationToken);

    /// <param name="text">Part of the invoice's number, its sender or what it stands on.</param>
    /// <param name="sort">A column of the list, with a minus for the other direction; the latest invoice first otherwise.</param>
    /// <param name="skip">Rows to leave out at the start.</param>
    /// <param name="take">Rows at the most; null for all of them.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<IReadOnlyList<PostingRow>> ListAsync(string? text, string? sort, int skip, int? take, CancellationToken cancellationToken)
    {
        var sorted = Sorted(Holding(text), sort).ThenByDescending(posting => posting.Id).Skip(skip);
        var rows = await Named(take is { } most ? sorted.Take(most) : sorted).ToListAsync(cancellationToken);
        return [.. rows.Select(Row)];
    }

    public async Task<PostingRow?> FindAsync(Id<CostPosting> id, CancellationToken cancellationToken) =>
        await Named(db.CostPostings.Where(posting => posting.Id == id)).SingleOrDefaultAsync(cancellationToken) is { } row ? Row(row) : null;

    private IQueryable<Names> Named(IQueryable<CostPosting> postings) => postings.AsNoTracking().Select(posting => new Names(
        posting,
        db.Contracts.Where(contract => contract.Id == posting.ContractId).Select(contract => contract.Ref).FirstOrDefault(),
        db.Shipments.Where(shipment => shipment.Id == posting.ShipmentId).Select(shipment => shipment.Ref).FirstOrDefault(),
        db.Lots.Where(lot => lot.Id == posting.LotId).Select(lot => lot.Ref + " " + lot.Name).FirstOrDefault(),
        db.People.Where(person => person.Id == posting.By).Select(person => person.Name).First()));

    private static PostingRow Row(Names row) => new(row.Posting, row.Contract is { } contract ? $"contract {contract}" : row.Shipment is { } shipment ? $"shipment {shipment}" : $"lot {row.Lot}", row.Who);

    private static IOrderedQueryable<CostPosting> Sorted(IQueryable<CostPosting> postings, string? sort) => sort switch
    {
        "document" => postings.OrderBy(posting => posting.Document),
        "-document" => postings.OrderByDescending(posting => posting.Document),
        "on" => postings.OrderBy(posting => posting.On),
        "stage" => postings.OrderBy(posting => posting.Stage),
        "-stage" => postings.OrderByDescending(posting => posting.Stage),
        "from" => postings.OrderBy(posting => posting.From),
        "-from" => postings.OrderByDescending(posting => posting.From),
        "house" => postings.OrderBy(posting => posting.House.MinorUnits),
        "-house" => postings.OrderByDescending(posting => posting.House.MinorUnits),
        _ => postings.OrderByDescending(posting => posting.On),
    };

    private IQueryable<CostPosting> Holding(string? text)
    {
        var folded = SearchText.Of(text);
        if (folded.Length == 0)
        {
            return db.CostPostings;
        }

        var typed = text!.Trim();
        return db.CostPostings.Where(posting =>
            posting.Document.Contains(typed) || (posting.From != null && posting.From.Contains(typed))
            || db.Contracts.Any(contract => contract.Id == posting.ContractId && contract.Ref.Contains(typed))
            || db.Shipments.Any(shipment => shipment.Id == posting.ShipmentId && shipment.SearchText.Contains(folded))
            || db.Lots.Any(lot => lot.Id == posting.LotId && lot.SearchText.Contains(folded)));
    }

    private sealed record Names(CostPosting Posting, string? Contract, string? Shipment, string? Lot, string Who);
}
