using System.Globalization;
using System.Linq.Expressions;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Samples;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Search;

/// <summary>
/// Finds lots, offers, marks, suppliers, producers, samples and contracts by any part of their name or code, without regard to
/// case and accents: every word that is typed must stand somewhere in the folded text of the record.
/// </summary>
public sealed class SearchQuery(LedgerContext db)
{
    /// <summary>With fewer letters nearly everything would be found.</summary>
    public const int FewestLetters = 2;

    private const int MostWords = 12;

    private const string Offers = "Offers";

    private static readonly Expression<Func<Lot, Found>> LotRow =
        lot => new Found(lot.Id.Value, lot.Name, lot.Ref, Detail(lot.Region ?? lot.CountryCode, lot.CropYear));

    private static readonly Expression<Func<Lot, Found>> MarkRow =
        lot => new Found(lot.Id.Value, lot.IcoMark!, lot.Ref, lot.Name);

    /// <summary>The kinds that a reader of these rooms can find.</summary>
    public static IReadOnlyList<FoundKind> Kinds(Func<string, bool> mayRead) =>
        [.. Enum.GetValues<FoundKind>().Where(kind => mayRead(RoomOf(kind)))];

    public static bool IsTooShort(string? text) => SearchText.Of(text).Length < FewestLetters;

    /// <summary>The first rows of each kind of which there are any.</summary>
    public async Task<IReadOnlyList<FoundGroup>> FindAsync(
        string text, int rowsEach, Func<string, bool> mayRead, Seal seal, CancellationToken cancellationToken)
    {
        var groups = new List<FoundGroup>();
        foreach (var kind in Kinds(mayRead))
        {
            var group = await ListAsync(kind, text, 0, rowsEach, mayRead, seal, cancellationToken);
            if (group.Total > 0)
            {
                groups.Add(group);
            }
        }

        return groups;
    }

    /// <summary>One page of one kind; nothing of a kind whose room the reader may not open, and nothing that is sealed.</summary>
    public async Task<FoundGroup> ListAsync(
        FoundKind kind, string text, int skip, int take, Func<string, bool> mayRead, Seal seal, CancellationToken cancellationToken)
    {
        if (!mayRead(RoomOf(kind)) || IsTooShort(text))
        {
            return new FoundGroup(kind, [], 0);
        }

        var window = new Window(kind, skip, take, cancellationToken);
        return kind switch
        {
            FoundKind.Lot => await window.OfAsync(Lots(text, seal), LotRow),
            FoundKind.Mark => await window.OfAsync(Marks(text, seal), MarkRow),
            FoundKind.Offer => await OffersAsync(window, text, seal),
            FoundKind.Supplier => await window.OfAsync(Suppliers(text), supplier => new Found(supplier.Id.Value, supplier.Name, null, Detail(supplier.Kind.Word(), supplier.CountryCode))),
            FoundKind.Producer => await window.OfAsync(Producers(text), producer => new Found(producer.Id.Value, producer.Name, null, Detail(producer.Kind.Word(), producer.Region ?? producer.CountryCode))),
            FoundKind.Sample => await window.OfAsync(Samples(text, seal), sample => new Found(sample.Id.Value, sample.LabelCode, null, sample.ReceivedOn == null ? "not here yet" : Day(sample.ReceivedOn.Value))),
            FoundKind.Contract => await window.OfAsync(ContractsOf(text, seal), contract => new Found(contract.Id.Value, contract.Ref, null, db.Suppliers.Where(supplier => supplier.Id == contract.SupplierId).Select(supplier => supplier.Name).First())),
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };
    }

    private static string RoomOf(FoundKind kind) => kind switch
    {
        FoundKind.Producer => "Origins",
        FoundKind.Sample => "Samples",
        FoundKind.Contract => "Contracts",
        _ => Offers,
    };

    /// <summary>Each word is a condition of its own, and a query holds only so many.</summary>
    private static IEnumerable<string> Words(string text) =>
        SearchText.Of(text).Split(' ', StringSplitOptions.RemoveEmptyEntries).Distinct().Take(MostWords);

    private IQueryable<Lot> Lots(string text, Seal seal) => Words(text)
        .Aggregate(Unsealed(seal), (lots, word) => lots.Where(lot => lot.SearchText.Contains(word)))
        .OrderBy(lot => lot.Name).ThenBy(lot => lot.Ref).ThenBy(lot => lot.Id);

    private IQueryable<Lot> Marks(string text, Seal seal)
    {
        var asTyped = text.Trim();
        var whole = IcoMark.Normalise(asTyped) ?? asTyped;
        return Unsealed(seal)
            .Where(lot => lot.IcoMark != null && (lot.IcoMark.Contains(asTyped) || lot.IcoMark.Contains(whole)))
            .OrderBy(lot => lot.IcoMark).ThenBy(lot => lot.Id);
    }

    private IQueryable<Lot> Unsealed(Seal seal)
    {
        var hidden = seal.Lots;
        return seal.IsOfEveryCoffee ? db.Lots.Where(_ => false)
            : hidden.Count == 0 ? db.Lots.AsNoTracking() : db.Lots.AsNoTracking().Where(lot => !hidden.Contains(lot.Id));
    }

    private async Task<FoundGroup> OffersAsync(Window window, string text, Seal seal)
    {
        var hidden = seal.Lots;
        var offers = seal.IsOfEveryCoffee ? db.Offers.Where(_ => false)
            : hidden.Count == 0 ? db.Offers.AsNoTracking() : db.Offers.AsNoTracking().Where(offer => !hidden.Contains(offer.LotId));
        var found = Words(text).Aggregate(offers, (left, word) => left.Where(offer => offer.SearchText.Contains(word)));
        var total = await found.CountAsync(window.CancellationToken);
        var rows = await found.OrderBy(offer => offer.Ref).ThenBy(offer => offer.Id).Skip(window.Skip).Take(window.Take)
            .Join(db.Lots, offer => offer.LotId, lot => lot.Id, (offer, lot) => new { offer, lot.Name })
            .Join(db.Suppliers, row => row.offer.SupplierId, supplier => supplier.Id, (row, supplier) => new { row.offer, row.Name, Supplier = supplier.Name })
            .OrderBy(row => row.offer.Ref).ThenBy(row => row.offer.Id)
            .ToListAsync(window.CancellationToken);
        return new FoundGroup(window.Kind, [.. rows.Select(row => new Found(
            row.offer.Id.Value, row.Name, row.offer.Ref, Detail(row.Supplier, Day(row.offer.RevisedOn))))], total);
    }

    private IQueryable<Supplier> Suppliers(string text) => Words(text)
        .Aggregate(db.Suppliers.AsNoTracking(), (suppliers, word) => suppliers.Where(supplier => supplier.SearchText.Contains(word)))
        .OrderBy(supplier => supplier.Name).ThenBy(supplier => supplier.Id);

    private IQueryable<Producer> Producers(string text) => Words(text)
        .Aggregate(db.Producers.AsNoTracking(), (producers, word) => producers.Where(producer => producer.SearchText.Contains(word)))
        .OrderBy(producer => producer.Name).ThenBy(producer => producer.Id);

    private IQueryable<Sample> Samples(string text, Seal seal)
    {
        var code = text.Trim().ToUpperInvariant();
        return db.Samples.AsNoTracking().Unsealed(seal).Where(sample => sample.LabelCode.Contains(code))
            .OrderBy(sample => sample.LabelCode).ThenBy(sample => sample.Id);
    }

    /// <summary>A contract with a sealed lot on it would name that lot.</summary>
    private IQueryable<Contract> ContractsOf(string text, Seal seal)
    {
        var hidden = seal.Lots;
        var found = Words(text).Aggregate(db.Contracts.AsNoTracking(), (left, word) => left.Where(contract => contract.SearchText.Contains(word)));
        found = seal.IsOfEveryCoffee ? found.Where(_ => false)
            : hidden.Count == 0 ? found : found.Where(contract => !contract.Lots.Any(lot => hidden.Contains(lot.LotId)));
        return found
            .OrderByDescending(contract => contract.Ref);
    }

    private static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    private static string? Detail(params string?[] parts) =>
        parts.Any(part => part is not null) ? string.Join(" · ", parts.Where(part => part is not null)) : null;

    /// <summary>Which rows of a kind are asked for.</summary>
    private sealed record Window(FoundKind Kind, int Skip, int Take, CancellationToken CancellationToken)
    {
        public async Task<FoundGroup> OfAsync<T>(IQueryable<T> found, Expression<Func<T, Found>> row)
        {
            var total = await found.CountAsync(CancellationToken);
            return new FoundGroup(Kind, total == 0 ? [] : await found.Skip(Skip).Take(Take).Select(row).ToListAsync(CancellationToken), total);
        }
    }
}
