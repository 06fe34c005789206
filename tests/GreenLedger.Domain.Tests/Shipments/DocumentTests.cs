using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Tests.Contracts;

namespace GreenLedger.Domain.Tests.Shipments;

public sealed class DocumentTests
{
    private static readonly DateOnly Today = new(2027, 3, 8);

    [Theory] // handbook, trade 4.5: insurance under CIF and CIP; 6.3: organic into the EU; section 7: the EU's due diligence
    [InlineData(Incoterm.Fob, "CO", "DE", "", 10)]
    [InlineData(Incoterm.Cif, "CO", "DE", "", 11)]
    [InlineData(Incoterm.Fob, "CO", "DE", "organic", 11)]
    [InlineData(Incoterm.Fob, "CO", "GB", "organic", 8)]
    [InlineData(Incoterm.Cip, "ET", "US", "organic", 10)]
    public void The_standard_list_asks_by_delivery_rule_destination_and_certificate(Incoterm incoterm, string origin, string destination, string certificate, int documents)
    {
        var asked = StandardDocuments.All().Where(rule => rule.Asks(new DocumentCase(incoterm, origin, destination, [certificate]))).Select(rule => rule.Name).ToList();

        Assert.Equal(documents, asked.Count);
        Assert.Equal(incoterm is Incoterm.Cif or Incoterm.Cip, asked.Contains("Insurance certificate"));
        Assert.Equal(destination == "DE", asked.Contains("Due-diligence data, deforestation"));
        Assert.Equal(destination == "DE" && certificate == "organic", asked.Contains("Certificate of inspection, organic"));
    }

    [Fact]
    public void A_rule_by_origin_asks_nothing_of_a_lot_whose_origin_nobody_stated()
    {
        var rule = new DocumentRule("Liquoring report", 10, origins: "et ke");

        Assert.True(rule.Asks(new DocumentCase(Incoterm.Fob, "ET", "DE", [])));
        Assert.False(rule.Asks(new DocumentCase(Incoterm.Fob, null, "DE", [])));
        rule.PutAway();
        Assert.False(rule.Asks(new DocumentCase(Incoterm.Fob, "ET", "DE", [])));
    }

    [Fact]
    public void What_is_no_delivery_rule_or_country_is_refused()
    {
        Assert.Contains("“CFI” is no delivery rule", ContractDemo.Refusal(() => _ = new DocumentRule("Bill", 1, incoterms: "CFI")), StringComparison.Ordinal);
        Assert.Contains("“4” is no delivery rule", ContractDemo.Refusal(() => _ = new DocumentRule("Bill", 1, incoterms: "4")), StringComparison.Ordinal);
        Assert.Contains("no country code", ContractDemo.Refusal(() => _ = new DocumentRule("Bill", 1, destinations: "Germany")), StringComparison.Ordinal);
    }

    [Fact]
    public void Listing_again_keeps_what_was_done_and_drops_what_nobody_touched()
    {
        DocumentRule[] rules = [new("Bill of lading", 10), new("Insurance certificate", 20, incoterms: "CIF"), new("Letter", 30, incoterms: "CIF")];
        var shipment = Listed(rules, Incoterm.Cif);
        shipment.Document(shipment.Documents[1].Id, DocumentState.Asked, Today, null);

        shipment.ListDocuments(rules, [new DocumentCase(Incoterm.Fob, "CO", "DE", [])]);

        Assert.Equal(["Bill of lading", "Insurance certificate"], shipment.Documents.Select(document => document.Name));
        Assert.Equal(2, shipment.MissingDocuments);
    }

    [Fact]
    public void A_document_is_received_on_a_day_or_not_needed_for_a_reason()
    {
        var shipment = Listed([new("Bill of lading", 10), new("Fumigation certificate", 20)], Incoterm.Fob);
        var (bill, fumigation) = (shipment.Documents[0].Id, shipment.Documents[1].Id);

        Assert.Contains("which day", ContractDemo.Refusal(() => shipment.Document(bill, DocumentState.Received, null, null)), StringComparison.Ordinal);
        Assert.Contains("The reason why it is not needed", ContractDemo.Refusal(() => shipment.Document(fumigation, DocumentState.NotNeeded, null, " ")), StringComparison.Ordinal);
        Assert.Contains("stands in the checklist already", ContractDemo.Refusal(() => shipment.AddDocument("bill of lading")), StringComparison.Ordinal);
        shipment.Document(bill, DocumentState.Received, Today, null);
        shipment.Document(fumigation, DocumentState.NotNeeded, null, "Nothing was treated.");

        Assert.Equal(0, shipment.MissingDocuments);
    }

    [Fact]
    public void A_file_of_another_record_does_not_stand_for_a_document()
    {
        var shipment = Listed([new("Bill of lading", 10)], Incoterm.Fob);
        var file = new StoredFile("bill.pdf", "application/pdf", [1, 2, 3], ContractDemo.Buyer, ContractDemo.Now);
        var other = new Attachment(PapersOf.Shipment, Guid.CreateVersion7(), file, ContractDemo.Buyer, ContractDemo.Now);

        Assert.Contains("not attached to this shipment", ContractDemo.Refusal(() => shipment.Document(shipment.Documents[0].Id, DocumentState.Received, Today, null, other)), StringComparison.Ordinal);
    }

    private static Shipment Listed(DocumentRule[] rules, Incoterm incoterm)
    {
        var shipment = ShipmentTests.Loaded(ContractDemo.Signed(ContractDemo.Outright), 275, 18_975m);
        shipment.ListDocuments(rules, [new DocumentCase(incoterm, "CO", "DE", [])]);
        return shipment;
    }
}
