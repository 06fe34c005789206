namespace GreenLedger.Domain.Samples;

/// <summary>Label codes that are taken in the house; a new one is drawn until it is not among them.</summary>
public sealed class LabelCodes(IEnumerable<string> taken, Random random)
{
    private readonly HashSet<string> _taken = new(taken, StringComparer.OrdinalIgnoreCase);

    public string Next()
    {
        string code;
        do
        {
            code = LabelCode.Draw(random);
        }
        while (!_taken.Add(code));

        return code;
    }
}
