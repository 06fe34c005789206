namespace GreenLedger.Domain.Grading;

/// <summary>Beans of one kind of defect, as counted in the sample.</summary>
public sealed class DefectCount
{
    private DefectCount()
    {
        Kind = "";
    }

    internal DefectCount(string kind, int beans)
    {
        Kind = kind;
        Beans = beans;
    }

    /// <summary>The kind's code in the grade's scheme.</summary>
    public string Kind { get; private set; }

    public int Beans { get; private set; }

    internal void Recount(int beans) => Beans = beans;
}
