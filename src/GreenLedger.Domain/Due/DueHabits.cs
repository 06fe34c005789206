namespace GreenLedger.Domain.Due;

/// <summary>The days that the house allows where no contract dates anything. One row; common practice, no source.</summary>
public sealed class DueHabits
{
    public const int MostDays = 365;

    public Id<DueHabits> Id { get; private set; } = Id<DueHabits>.New();

    public int Version { get; private set; }

    /// <summary>Calendar days after the day on board by which a shipment's documents are to be here.</summary>
    public int DocumentDays { get; private set; } = 14;

    /// <summary>Calendar days after discharge by which a lot is to be received.</summary>
    public int ReceiptDays { get; private set; } = 7;

    /// <summary>Calendar days after receipt by which an arrival is to be cupped.</summary>
    public int CuppingDays { get; private set; } = 7;

    /// <summary>Calendar days ahead that the first page tells of.</summary>
    public int NoticeDays { get; private set; } = 7;

    /// <summary>A deadline that passed stays in the list for so many calendar days, so that nobody overlooks that it did.</summary>
    public int PastDays { get; private set; } = 7;

    /// <summary>Calendar days before its day from which the approval of a sample stands among what is to be decided.</summary>
    public int ApprovalDays { get; private set; } = 14;

    /// <summary>The hour of the house's clock from which the daily mails are written. Common practice, no source.</summary>
    public int MailHour { get; private set; } = 6;

    /// <exception cref="RuleBrokenException">There is no such hour.</exception>
    public void MailFrom(int hour)
    {
        Rule.Require(hour is >= 0 and <= 23, "The hour lies between 0 and 23.", nameof(MailHour));
        MailHour = hour;
    }

    /// <exception cref="RuleBrokenException">A number of days is below 0 or above a year.</exception>
    public void Allow(int documents, int receipt, int cupping, int notice)
    {
        DocumentDays = Days(documents, nameof(DocumentDays));
        ReceiptDays = Days(receipt, nameof(ReceiptDays));
        CuppingDays = Days(cupping, nameof(CuppingDays));
        NoticeDays = Days(notice, nameof(NoticeDays));
    }

    /// <exception cref="RuleBrokenException">A number of days is below 0 or above a year.</exception>
    public void Show(int past, int approval)
    {
        PastDays = Days(past, nameof(PastDays));
        ApprovalDays = Days(approval, nameof(ApprovalDays));
    }

    private static int Days(int days, string field)
    {
        Rule.Require(days is >= 0 and <= MostDays, $"These days lie between 0 and {MostDays}.", field);
        return days;
    }
}
