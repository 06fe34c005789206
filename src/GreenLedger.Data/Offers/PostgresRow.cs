using Npgsql;

namespace GreenLedger.Data.Offers;

/// <summary>One row of a COPY to PostgreSQL, written column by column in the types of the table.</summary>
internal sealed class PostgresRow(NpgsqlBinaryImporter importer, IReadOnlyList<string> types) : IRowOut
{
    private int _column;

    public void Begin()
    {
        importer.StartRow();
        _column = 0;
    }

    public void Null()
    {
        importer.WriteNull();
        _column++;
    }

    public void Value<TValue>(TValue value) => importer.Write(value, types[_column++]);
}
