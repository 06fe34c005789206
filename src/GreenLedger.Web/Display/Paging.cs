namespace GreenLedger.Web.Display;

/// <summary>Where a list stands: page (from 1), rows a page, rows in all, and the word for one and many rows.</summary>
public sealed record Paging(int Page, int Size, int Total, string One = "row", string Many = "rows")
{
    public const int UsualSize = 50;

    public int Pages => Math.Max(1, (Total + Size - 1) / Size);

    public int Skip => (Page - 1) * Size;

    public string Summary => Pages == 1
        ? Figures.Count(Total, One, Many)
        : $"{Figures.Count(Skip + 1)} to {Figures.Count(Math.Min(Skip + Size, Total))} of {Figures.Count(Total, One, Many)}";

    /// <summary>A page number from an address, kept within the list.</summary>
    public static Paging Of(int page, int total, string one = "row", string many = "rows", int size = UsualSize)
    {
        var last = Math.Max(1, (total + size - 1) / size);
        return new Paging(Math.Clamp(page, 1, last), size, total, one, many);
    }
}
