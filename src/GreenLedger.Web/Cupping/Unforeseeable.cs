using System.Security.Cryptography;

namespace GreenLedger.Web.Cupping;

/// <summary>Chance that nobody can foresee, for codes, places and orders of a blind table.</summary>
internal sealed class Unforeseeable : Random
{
    public override int Next() => RandomNumberGenerator.GetInt32(int.MaxValue);

    public override int Next(int maxValue) => maxValue <= 1 ? 0 : RandomNumberGenerator.GetInt32(maxValue);

    public override int Next(int minValue, int maxValue) => minValue == maxValue ? minValue : RandomNumberGenerator.GetInt32(minValue, maxValue);

    public override void NextBytes(byte[] buffer) => RandomNumberGenerator.Fill(buffer);

    public override void NextBytes(Span<byte> buffer) => RandomNumberGenerator.Fill(buffer);

    protected override double Sample() => Next() / (double)int.MaxValue;
}
