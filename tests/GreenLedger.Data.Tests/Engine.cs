namespace GreenLedger.Data.Tests;

/// <summary>The databases that the ledger can be kept in; every data test runs on each.</summary>
public enum Engine
{
    Sqlite,
    Postgres,
}
