namespace GreenLedger.Domain.Shipments;

/// <summary>
/// The documents that a new ledger asks for (handbook, trade 4.5, 6.3 and 7; which shipments need which is common practice, from
/// memory where no source is named). Every line is the house's to edit.
/// </summary>
public static class StandardDocuments
{
    /// <summary>Member states of the European Union in 2026, ISO 3166-1 (from memory).</summary>
    private const string Union = "AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK";

    public static IEnumerable<DocumentRule> All() =>
    [
        new("Bill of lading", 10, note: "The full set of originals, usually three, or a sea waybill."),
        new("Commercial invoice", 20),
        new("Packing list", 30),
        new("Weight certificate", 40, note: "Independent evidence of the shipping weight (European standard contract)."),
        new("Quality certificate", 50),
        new("ICO certificate of origin", 60, note: "Members of the International Coffee Organization issue it; its mark is on the bags."),
        new("Phytosanitary certificate", 70),
        new("Fumigation certificate", 80, note: "Where the coffee or the container was treated; otherwise say that it is not needed."),
        new("Proof of preferential origin", 90, destinations: Union, note: "Only for goods that are not free of duty already. Green coffee usually is: from memory, check the tariff."),
        new("Insurance certificate", 100, incoterms: "CIF CIP"),
        new("Certificate of inspection, organic", 110, destinations: Union, certificate: "organic", note: "Issued before departure; dated after the bill of lading the lot loses its organic status."),
        new("Import certificate, organic (NOP)", 120, destinations: "US", certificate: "organic", note: "From memory: asked for since 19 March 2024."),
        new("Due-diligence data, deforestation", 130, destinations: Union, note: "Regulation (EU) 2023/1115 with its later dates by size of firm."),
    ];
}
