using GreenLedger.Domain.Certificates;
using GreenLedger.Domain.Due;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Certificates;

/// <summary>Reads which certificates end soon.</summary>
public sealed class EndingCertificatesQuery(LedgerContext db, CertificateQuery certificates)
{
    /// <summary>A line for each that counts and ends within the days of the first alert, by its last day; none where one of the same holder and scheme runs longer.</summary>
    public async Task<IReadOnlyList<DueLine>> EndingAsync(DateOnly today, CancellationToken cancellationToken)
    {
        var habits = await db.CertificateHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        var running = (await certificates.ListAsync(null, today, cancellationToken)).Where(held => held.Certificate.Standing == CertificateState.Valid).ToList();
        return [.. running
            .Where(held => held.Certificate.Until.DayNumber - today.DayNumber <= habits.FirstAlertDays && !running.Exists(other => IsSame(other.Certificate, held.Certificate) && other.Certificate.Until > held.Certificate.Until))
            .Select(held => new DueLine(DueKind.Certificate, held.Certificate.Id.Value, $"renew the {held.Certificate.Scheme} certificate {held.Certificate.Number} of {held.Holder}", held.Holder == "the house" ? "buyer" : "seller", held.Certificate.Until))];
    }

    private static bool IsSame(Certificate one, Certificate other) => (one.Scheme, one.Holder, one.SupplierId, one.ProducerId) == (other.Scheme, other.Holder, other.SupplierId, other.ProducerId);
}
