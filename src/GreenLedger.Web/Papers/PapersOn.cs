using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Certificates;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Web.Papers;

/// <summary>What attachments and notes are on: the model of the partials <c>_Attachments</c> and <c>_Notes</c>.</summary>
public sealed record PapersOn(PapersOf About, Guid Id)
{
    public static PapersOn The(Id<Lot> lot) => new(PapersOf.Lot, lot.Value);

    public static PapersOn The(Id<Offer> offer) => new(PapersOf.Offer, offer.Value);

    public static PapersOn The(Id<Sample> sample) => new(PapersOf.Sample, sample.Value);

    public static PapersOn The(Id<Arrival> arrival) => new(PapersOf.Arrival, arrival.Value);

    public static PapersOn The(Id<Contract> contract) => new(PapersOf.Contract, contract.Value);

    public static PapersOn The(Id<Shipment> shipment) => new(PapersOf.Shipment, shipment.Value);

    public static PapersOn The(Id<Certificate> certificate) => new(PapersOf.Certificate, certificate.Value);

    /// <exception cref="RuleBrokenException">The word is none of lot, offer, sample, contract, shipment, arrival, certificate.</exception>
    public static PapersOn Read(string about, Guid id)
    {
        var known = Enum.GetValues<PapersOf>().Where(one => one.Word().Equals(about, StringComparison.OrdinalIgnoreCase)).ToList();
        Rule.Require(known.Count == 1, "Say what it is about: lot, offer, sample, contract, shipment, arrival or certificate.", nameof(About));
        return new PapersOn(known[0], id);
    }

    /// <summary>The area of docs/roles.md that the record stands in.</summary>
    public string Area => About switch
    {
        PapersOf.Sample => "Samples",
        PapersOf.Contract => "Contracts",
        PapersOf.Shipment => "Shipments",
        PapersOf.Arrival => "Arrivals",
        PapersOf.Certificate => "Certificates",
        _ => "Offers",
    };
}
