using GreenLedger.Data.Tests;

[assembly: AssemblyFixture(typeof(Ledgers))]
