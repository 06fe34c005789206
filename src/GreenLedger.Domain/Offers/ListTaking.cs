using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers;

/// <summary>Takes the rows of one list in: makes new lots and offers, revises those known, and leaves the rest alone.</summary>
internal sealed class ListTaking
{
    private readonly ListCase _case;
    private readonly Id<OfferList>? _listId;
    private readonly Dictionary<string, List<KnownOffer>> _known;
    private readonly Dictionary<string, Producer> _producers;

    public ListTaking(ListCase theCase, Id<OfferList>? listId)
    {
        _case = theCase;
        _listId = listId;
        _known = theCase.Known.GroupBy(known => SearchText.Of(known.Offer.Ref)).ToDictionary(group => group.Key, group => group.ToList());
        _producers = theCase.Producers.GroupBy(producer => ProducerKey(producer.Name, producer.CountryCode)).ToDictionary(group => group.Key, group => group.First());
    }

    public List<RowOutcome> Accepted { get; } = [];

    public List<RowOutcome> Revised { get; } = [];

    public List<RowOutcome> Unchanged { get; } = [];

    public List<Producer> NewProducers { get; } = [];

    public RowOutcome Take(OfferRow row)
    {
        if (Known(row) is not { } known)
        {
            return Into(Accepted, New(row));
        }

        var outcome = new RowOutcome(row, known.Offer, known.Lot);
        if (_case.IsRepeat || _case.ReceivedOn < known.Offer.RevisedOn)
        {
            return Into(Unchanged, outcome);
        }

        var saysMore = FillIn(known.Lot, row);
        if (!saysMore && !known.Offer.Differs(row.Packing, row.Asking, row.Terms, row.State, row.StatedScore))
        {
            return Into(Unchanged, outcome);
        }

        known.Offer.Revise(row.Packing, row.Asking, row.Terms, row.State, row.StatedScore, _case.ReceivedOn, _listId);
        return Into(Revised, outcome);
    }

    private static RowOutcome Into(List<RowOutcome> rows, RowOutcome outcome)
    {
        rows.Add(outcome);
        return outcome;
    }

    /// <summary>The offer of this reference; where both name a crop year, only one of the same crop, else it is a new lot.</summary>
    private KnownOffer? Known(OfferRow row) =>
        _known.GetValueOrDefault(SearchText.Of(row.Ref))?
            .Where(known => row.CropYear is null || known.Lot.CropYear is null || row.CropYear == known.Lot.CropYear)
            .MaxBy(known => known.Offer.FirstOfferedOn);

    private RowOutcome New(OfferRow row)
    {
        var lot = new Lot(row.Ref, row.Name, _case.Supplier.Id);
        lot.Grow(row.CountryCode, row.Region, ProducerOf(row)?.Id, row.Varieties, row.AltitudeFrom, row.AltitudeTo);
        lot.Process(row.Process?.Id, row.ProcessAsWritten);
        lot.Prepare(row.CropYear, row.Grade, row.Screen, row.StatedMoisture);
        lot.Pack(row.Packing);
        lot.Certify(row.Certificates);
        lot.Mark(row.IcoMark);
        lot.Note(row.Notes);
        var offer = new Offer(_case.Supplier.Id, lot, row.Packing, row.Asking, row.Terms, row.State, _case.ReceivedOn, _listId);
        offer.StateScore(row.StatedScore);
        return new RowOutcome(row, offer, lot);
    }

    /// <summary>A newer list fills what the lot does not know yet and adds certificates; what is known stays, since the buyer may have put it right.</summary>
    private bool FillIn(Lot lot, OfferRow row)
    {
        var before = (lot.CountryCode, lot.Region, lot.ProducerId, lot.Varieties, lot.AltitudeFrom, lot.ProcessAsWritten, lot.CropYear, lot.Grade, lot.Screen, lot.StatedMoisture, lot.IcoMark, lot.Notes, lot.Certificates.Count);
        lot.Grow(
            lot.CountryCode ?? row.CountryCode, lot.Region ?? row.Region, lot.ProducerId ?? ProducerOf(row)?.Id, lot.Varieties ?? row.Varieties,
            lot.AltitudeFrom ?? row.AltitudeFrom, lot.AltitudeTo ?? row.AltitudeTo);
        if (lot.ProcessMethodId is null && lot.ProcessAsWritten is null)
        {
            lot.Process(row.Process?.Id, row.ProcessAsWritten);
        }

        lot.Prepare(lot.CropYear ?? row.CropYear, lot.Grade ?? row.Grade, lot.Screen ?? row.Screen, lot.StatedMoisture ?? row.StatedMoisture);
        lot.Certify(lot.Certificates.Concat(row.Certificates));
        lot.Mark(lot.IcoMark ?? row.IcoMark);
        lot.Note(lot.Notes ?? row.Notes);
        return before != (lot.CountryCode, lot.Region, lot.ProducerId, lot.Varieties, lot.AltitudeFrom, lot.ProcessAsWritten, lot.CropYear, lot.Grade, lot.Screen, lot.StatedMoisture, lot.IcoMark, lot.Notes, lot.Certificates.Count);
    }

    private Producer? ProducerOf(OfferRow row)
    {
        if (row.Producer is null)
        {
            return null;
        }

        var key = ProducerKey(row.Producer, row.CountryCode);
        if (!_producers.TryGetValue(key, out var producer))
        {
            producer = new Producer(row.Producer, row.ProducerKind, row.CountryCode, row.Region);
            producer.StateAltitude(row.AltitudeFrom, row.AltitudeTo);
            _producers.Add(key, producer);
            NewProducers.Add(producer);
        }

        return producer;
    }

    private static string ProducerKey(string name, string? countryCode) => $"{SearchText.Of(name)}|{countryCode}";
}
