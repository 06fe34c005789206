using System.Globalization;
using GreenLedger.Domain.Certificates;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.SeedDemo.People;

namespace GreenLedger.SeedDemo.Certificates;

/// <summary>
/// Certificates of the producers whose coffee was bought: most run, one ends soon, one is suspended, one nobody sent; and that of the
/// house. The certifiers are invented.
/// </summary>
internal sealed class CertificateFolder(Cast cast, DateTimeOffset now, Draw draw)
{
    private DateOnly Today => DateOnly.FromDateTime(now.UtcDateTime);

    public IReadOnlyList<Certificate> File(IReadOnlyDictionary<Domain.Id<Lot>, Lot> lots, IEnumerable<Contract> contracts)
    {
        var claimed = contracts.SelectMany(contract => contract.Lots).Select(line => lots[line.LotId]).Where(lot => lot.ProducerId is not null)
            .SelectMany(lot => lot.Certificates.Select(scheme => (Producer: lot.ProducerId!.Value, Scheme: scheme))).Distinct().ToList();
        var filed = claimed.Where((_, at) => at != 1).Select((one, at) => new Certificate(new CertificateTerms(
            one.Scheme, CertificateHolder.Producer, null, one.Producer, Number(one.Scheme), "Green coffee of all fields of the producer", "Rowan Field Inspection",
            Today.AddYears(-3).AddDays(-at), at == 0 ? Today.AddDays(24) : Today.AddDays(140 + 17 * at)))).ToList();
        if (filed.Count > 2)
        {
            filed[2].Stand(CertificateState.Suspended, "The yearly inspection was put off; the certifier decides next month", cast.Buyer.Id, now.AddDays(-6));
        }

        return [.. filed, new Certificate(new CertificateTerms("organic", CertificateHolder.House, null, null, Number("organic"), "Storing, roasting and selling of coffee", "Rowan Field Inspection", Today.AddYears(-1), Today.AddDays(200)))];
    }

    private string Number(string scheme) => string.Create(CultureInfo.InvariantCulture, $"{char.ToUpperInvariant(scheme[0])}-{draw.Between(10000, 99999)}");
}
