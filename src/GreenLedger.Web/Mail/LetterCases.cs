using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Offers;
using GreenLedger.Documents.Arrivals;
using GreenLedger.Documents.Contracts;
using GreenLedger.Documents.Papers;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Arrivals;
using GreenLedger.Web.Display;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Mail;

/// <summary>Somebody at the supplier whom such papers go to.</summary>
internal sealed record Recipient(string Address, string Name, string Language);

/// <summary>A paper that can be sent to a supplier.</summary>
/// <param name="Kind">Contacts that receive this kind are offered.</param>
/// <param name="About">The record whose page shows what was sent.</param>
/// <param name="Called">Its number or name.</param>
/// <param name="File">What goes with the text.</param>
internal sealed record LetterCase(
    MessagePurpose Purpose, Receives Kind, Guid About, string Called, Id<Supplier> Supplier, string House, IReadOnlyList<Recipient> Recipients, MailFile? File)
{
    /// <summary>The language that was last used with this supplier; null where that is not kept for such papers.</summary>
    public string? Remembered { get; init; }

    /// <summary>Where none is asked for, the one that is remembered, else that of the first contact.</summary>
    public string Language(string? asked) => asked ?? Remembered ?? (Recipients.Count > 0 ? Recipients[0].Language : "en");

    public string Subject(string? language) => CoverLetter.Subject(Kind, Language(language), Called, House);

    public string Text(string? language, string by) => CoverLetter.Text(Kind, Language(language), Called, $"{by}\n{House}");

    /// <summary>As it goes out.</summary>
    /// <exception cref="RuleBrokenException">Nobody is chosen, or somebody whom this is not sent to.</exception>
    public Letter To(IReadOnlyCollection<string> addresses, string? subject, string? text)
    {
        Rule.Require(
            addresses.Count > 0 && addresses.All(address => Recipients.Any(one => string.Equals(one.Address, address, StringComparison.OrdinalIgnoreCase))),
            $"Choose whom to send it to, of the supplier’s contacts that receive {Kind.Word()}.", "To");
        return new Letter(Purpose, About, Rule.Text(subject, "The subject", 200, "Subject"), Rule.Text(text, "The text", 8000, "Text"), File);
    }
}

/// <summary>Finds the papers of contracts, claims and arrivals that go to suppliers.</summary>
internal sealed class LetterCases(LedgerContext db, ContractQuery contracts, ClaimQuery claims, ArrivalReports arrivals, HouseZone house, TimeProvider clock)
{
    /// <summary>The purchase confirmation; null where there is no such contract.</summary>
    public async Task<LetterCase?> ConfirmationAsync(Id<Contract> id, string by, CancellationToken cancellationToken)
    {
        if (await contracts.FindAsync(id, cancellationToken) is not { } contract)
        {
            return null;
        }

        using var file = new MemoryStream();
        PurchaseConfirmation.Write(contract, by, clock.GetUtcNow(), file, house.Zone);
        var name = $"{contract.Ref}-v{(contract.InForce ?? contract.Newest).Number}.pdf";
        return await CaseAsync(MessagePurpose.Contract, Receives.ContractPapers, id.Value, contract.Ref, contract.SupplierId, new MailFile(name, PurchaseConfirmation.MediaType, file.ToArray()), cancellationToken);
    }

    /// <summary>The letter of a claim; null where there is no such claim.</summary>
    public async Task<LetterCase?> ClaimAsync(Id<Claim> id, string by, CancellationToken cancellationToken)
    {
        if (await claims.FindAsync(id, cancellationToken) is not { } claim)
        {
            return null;
        }

        using var file = new MemoryStream();
        ClaimLetter.Write(claim, by, clock.GetUtcNow(), file, house.Zone);
        var supplier = await db.Contracts.Where(contract => contract.Id == claim.ContractId).Select(contract => contract.SupplierId).SingleAsync(cancellationToken);
        return await CaseAsync(MessagePurpose.Claim, Receives.Claims, id.Value, claim.Ref, supplier, new MailFile($"{claim.Ref}.pdf", ClaimLetter.MediaType, file.ToArray()), cancellationToken);
    }

    /// <summary>The report on an arrival in a language; null where there is no such arrival.</summary>
    /// <param name="id">The arrival.</param>
    /// <param name="language">ISO 639-1; the usual one for the supplier where none is asked for.</param>
    /// <param name="by">Who tells it.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<LetterCase?> ArrivalAsync(Id<Arrival> id, string? language, string by, CancellationToken cancellationToken)
    {
        if (await arrivals.FindAsync(id, language, null, by, cancellationToken) is not { } found)
        {
            return null;
        }

        var goods = found.Report.Goods;
        var letter = await CaseAsync(MessagePurpose.Arrival, Receives.ArrivalReports, id.Value, $"{goods.LotRef} ({goods.ContractRef})", found.Supplier, null, cancellationToken)
            with
        { Remembered = SupplierContact.Languages.Contains(found.Report.Language) ? found.Report.Language : null };
        using var file = new MemoryStream();
        ArrivalPdf.Write(found.Report with { Language = letter.Language(language) }, file);
        return letter with { File = new MailFile(found.Report.FileName + ".pdf", ArrivalPdf.MediaType, file.ToArray()) };
    }

    private async Task<LetterCase> CaseAsync(
        MessagePurpose purpose, Receives kind, Guid about, string called, Id<Supplier> supplier, MailFile? file, CancellationToken cancellationToken)
    {
        var contacts = await db.SupplierContacts.AsNoTracking().Of(supplier).Where(contact => contact.IsActive).ToListAsync(cancellationToken);
        var buyer = await db.Houses.AsNoTracking().Select(one => one.Name).SingleAsync(cancellationToken);
        return new LetterCase(
            purpose, kind, about, called, supplier, buyer,
            [.. contacts.Where(contact => contact.Receives.HasFlag(kind)).Select(contact => new Recipient(contact.Email, contact.Name, contact.Language))],
            file);
    }
}
