namespace GreenLedger.Domain.Certificates;

/// <summary>A certificate with the name of who holds it.</summary>
public sealed record HeldCertificate(Certificate Certificate, string Holder);

/// <summary>A scheme that a lot claims, held against the certificates of its producer and its seller.</summary>
/// <param name="On">The day that matters; null while it has not come.</param>
/// <param name="Held">The certificate that it rests on, the best there is; null for none.</param>
/// <param name="Holds">Whether a certificate that counts ran on that day; of a day that has not come, whether one runs today.</param>
/// <param name="Said">In a sentence.</param>
public sealed record ClaimedScheme(string Scheme, DateOnly? On, HeldCertificate? Held, bool Holds, string Said)
{
    /// <summary>Holds each scheme against the certificates on the day that matters: signed, or on board (handbook, trade 6.4).</summary>
    /// <param name="claimed">Schemes that the lot claims.</param>
    /// <param name="known">Certificates of its producer and its seller.</param>
    /// <param name="signedOn">Null while the contract is not signed.</param>
    /// <param name="onBoard">Null while it has not sailed.</param>
    public static IReadOnlyList<ClaimedScheme> Of(
        IEnumerable<string> claimed, IReadOnlyCollection<HeldCertificate> known, DateOnly? signedOn, DateOnly? onBoard, CertificateHabits habits, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(habits);
        return [.. claimed.Order(StringComparer.OrdinalIgnoreCase).Select(scheme => Of(scheme, known, signedOn, onBoard, habits, today))];
    }

    private static ClaimedScheme Of(string scheme, IReadOnlyCollection<HeldCertificate> known, DateOnly? signedOn, DateOnly? onBoard, CertificateHabits habits, DateOnly today)
    {
        var byContract = habits.GoesByContractDay(scheme);
        var (matters, what) = byContract ? (signedOn, "when the contract was signed") : (onBoard, "on board");
        var (day, when) = matters is { } day0 ? (day0, $"{what}, {CertificateWords.Day(day0)}") : (today, $"today, and {(byContract ? "the contract is not signed yet" : "it has not sailed yet")}");
        var own = known.Where(one => string.Equals(one.Certificate.Scheme, scheme, StringComparison.OrdinalIgnoreCase)).ToList();
        var runs = own.Where(one => one.Certificate.RunsOn(day)).OrderBy(one => one.Certificate.Standing).ThenByDescending(one => one.Certificate.Until).FirstOrDefault();
        return runs switch
        {
            { Certificate.Standing: CertificateState.Valid } => new(scheme, matters, runs, true, $"{scheme}: {NameOf(runs)} {(matters is null ? "is" : "was")} valid {when}."),
            not null => new(scheme, matters, runs, false, $"{scheme} is claimed, and {NameOf(runs)} is {runs.Certificate.Standing.Word()}: decide by hand whether the claim stands."),
            _ => new(scheme, matters, own.MaxBy(one => one.Certificate.Until), false, $"{scheme} is claimed, and no certificate of the producer or the seller {(matters is null ? "is" : "was")} valid {when}{Nearest(own)}."),
        };
    }

    private static string Nearest(List<HeldCertificate> own) => own.MaxBy(one => one.Certificate.Until) is { } last
        ? $"; {NameOf(last)} ran from {CertificateWords.Day(last.Certificate.From)} to {CertificateWords.Day(last.Certificate.Until)}"
        : "";

    private static string NameOf(HeldCertificate held) => $"certificate {held.Certificate.Number} of {held.Holder}";
}
