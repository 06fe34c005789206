namespace GreenLedger.Domain.Archive;

/// <summary>How the values of a column are written in an archive.</summary>
public enum ColumnKind
{
    /// <summary>As it stands.</summary>
    Text = 0,

    /// <summary>A whole number.</summary>
    Whole = 1,

    /// <summary>An exact decimal number, without zeros at its end.</summary>
    Exact = 2,

    /// <summary>A number of statistics, with as many digits as bring back the same one.</summary>
    Number = 3,

    /// <summary>true or false.</summary>
    YesNo = 4,

    /// <summary>2026-11-30.</summary>
    Day = 5,

    /// <summary>A moment in UTC, to the millionth of a second: both databases keep that much.</summary>
    Moment = 6,

    /// <summary>A UUID in small letters.</summary>
    Identity = 7,

    /// <summary>Bytes: the cell names the member of the archive that holds them.</summary>
    Bytes = 8,

    /// <summary>A list as a JSON array.</summary>
    List = 9,
}
