using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Display;

/// <summary>Where the page of a record is.</summary>
public static class RecordPages
{
    private static readonly Dictionary<string, string> Pages = new()
    {
        ["Lot"] = "/Offers/Lot",
        ["Offer"] = "/Offers/Offer",
        ["OfferList"] = "/Offers/List",
        ["Supplier"] = "/Offers/Supplier",
        ["Producer"] = "/Origins/Producer",
        ["DueDiligence"] = "/Offers/Diligence",
        ["Sample"] = "/Samples/Sample",
        ["GreenGrade"] = "/Grading/Grade",
        ["Decision"] = "/Choosing/Decision",
        ["Certificate"] = "/Certificates/Certificate",
        ["Contract"] = "/Contracts/Contract",
        ["StandardForm"] = "/Contracts/Form",
        ["BuyingRules"] = "/Choosing/RuleSet",
        ["CuppingSession"] = "/Cupping/Table",
        ["Shipment"] = "/Shipments/Shipment",
        ["Arrival"] = "/Arrivals/Arrival",
        ["CostPosting"] = "/Costs/Posting",
        ["StockCount"] = "/Stock/Count",
        ["Purpose"] = "/Stock/Purpose",
        ["MockRecall"] = "/Trace/Recall",
        ["Route"] = "/Pricing/Route",
    };

    /// <summary>The address of the record's page; null for a kind that has none.</summary>
    public static string? Find(IUrlHelper url, string kind, string id) =>
        Pages.TryGetValue(kind, out var page) ? url.Page(page, new { id }) : null;
}
