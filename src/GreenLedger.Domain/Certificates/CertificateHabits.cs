namespace GreenLedger.Domain.Certificates;

/// <summary>What the house looks at when a lot claims a scheme. One row; days and schemes are common practice (handbook, trade 6.4), which the buyer sets.</summary>
public sealed class CertificateHabits
{
    public Id<CertificateHabits> Id { get; private set; } = Id<CertificateHabits>.New();

    public int Version { get; private set; }

    /// <summary>Calendar days before its end from which a certificate is due to be renewed.</summary>
    public int FirstAlertDays { get; private set; } = 60;

    /// <summary>Calendar days before its end from which that is urgent.</summary>
    public int LastAlertDays { get; private set; } = 30;

    /// <summary>Schemes of which the day that the contract was signed matters, with commas between; of all others the day on board does.</summary>
    public string ByContractDay { get; private set; } = "fairtrade";

    public bool GoesByContractDay(string scheme) => ByContractDay.Split(", ").Contains(scheme, StringComparer.OrdinalIgnoreCase);

    /// <exception cref="RuleBrokenException">The days stand in no order, or the text is too long.</exception>
    public void Keep(int firstAlert, int lastAlert, string? byContractDay)
    {
        Rule.Require(firstAlert is >= 0 and <= 365, "The first alert comes 0 to 365 days before the end.", nameof(FirstAlertDays));
        Rule.Require(lastAlert >= 0 && lastAlert <= firstAlert, "The last alert comes after the first: give fewer days.", nameof(LastAlertDays));
        var schemes = (Rule.OptionalText(byContractDay, "The schemes", 200, nameof(ByContractDay)) ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        (FirstAlertDays, LastAlertDays, ByContractDay) = (firstAlert, lastAlert, string.Join(", ", schemes.Select(scheme => scheme.ToLowerInvariant()).Distinct().Order(StringComparer.Ordinal)));
    }
}
