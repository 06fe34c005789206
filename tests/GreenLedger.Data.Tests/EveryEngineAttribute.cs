using System.Reflection;
using Xunit.Sdk;
using Xunit.v3;

namespace GreenLedger.Data.Tests;

/// <summary>
/// Runs a theory once on each database: <c>[Theory, EveryEngine]</c> on a method that takes an <see cref="Engine"/>.
/// Without a PostgreSQL to use its run is skipped, saying why; <c>tests/run</c> starts one.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class EveryEngineAttribute : DataAttribute
{
    public override ValueTask<IReadOnlyCollection<ITheoryDataRow>> GetData(
        MethodInfo testMethod, DisposalTracker disposalTracker)
    {
        IReadOnlyCollection<ITheoryDataRow> rows =
        [
            new TheoryDataRow<Engine>(Engine.Sqlite),
            new TheoryDataRow<Engine>(Engine.Postgres)
            {
                Skip = Ledgers.PostgresServer is null
                    ? "No PostgreSQL: set GREENLEDGER_TEST_POSTGRES to a connection string, or run tests/run, which starts one."
                    : null,
            },
        ];
        return ValueTask.FromResult(rows);
    }

    public override bool SupportsDiscoveryEnumeration() => true;
}
