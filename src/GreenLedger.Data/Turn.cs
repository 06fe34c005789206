namespace GreenLedger.Data;

/// <summary>What one caller does at a time, over all nodes. PostgreSQL locks by the number, which nothing else in the database uses.</summary>
internal enum Turn
{
    Preparing = 5080,
    Numbering = 5081,
}
