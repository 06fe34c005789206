using GreenLedger.Data.Samples;

namespace GreenLedger.Web.Samples;

/// <summary>Where the record that decided a sample is read, and of which area it is.</summary>
internal static class DecidedPages
{
    public static string Area(this SampleDecision decided) => decided.Kind switch
    {
        DecidedBy.Approval => "Contracts",
        DecidedBy.Comparison => "Arrivals",
        _ => "Choosing",
    };

    public static string Page(this SampleDecision decided) => decided.Kind switch
    {
        DecidedBy.Approval => "/Contracts/Contract",
        DecidedBy.Comparison => "/Arrivals/Arrival",
        _ => "/Choosing/Decision",
    };
}
