using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Arrivals;

/// <summary>A receipt as it stood before it was corrected, with the reason.</summary>
public sealed class EarlierReceipt
{
    private EarlierReceipt()
    {
        Was = null!;
        Reason = "";
    }

    internal EarlierReceipt(int number, Receipt was, string reason, Id<Person> by, DateTimeOffset at)
    {
        Id = Id<EarlierReceipt>.New();
        Reason = Rule.Text(reason, "The reason for the correction", 1000, nameof(Reason));
        (Number, Was, By, At) = (number, was, by, at);
    }

    public Id<EarlierReceipt> Id { get; private set; }

    /// <summary>1 for the receipt as it was first written.</summary>
    public int Number { get; private set; }

    public Receipt Was { get; private set; }

    public string Reason { get; private set; }

    /// <summary>Who corrected it.</summary>
    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }
}
