using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// Sorts the rows of one list: those of unknown references are accepted, and made lots and offers when they are asked for;
/// known offers are revised where a row says something new, and left alone otherwise.
/// </summary>
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

    public List<OfferRow> Accepted { get; } = [];

    public List<RowOutcome> Revised { get; } = [];

    public List<RowOutcome> Unchanged { get; } = [];

    public List<Producer> NewProducers { get; } = [];

    public void Take(OfferRow row)
    {
        if (Known(row) is not { } known)
        {
            Accepted.Add(row);
            return;
        }

        var outcome = new RowOutcome(row, known.Offer, known.Lot, new Asking(known.Offer.Price, known.Offer.Differential));
        (IsRevised(row, known) ? Revised : Unchanged).Add(outcome);
    }

    private bool IsRevised(OfferRow row, KnownOffer known)
    {
        if (_case.IsRepeat || _case.ReceivedOn < known.Offer.RevisedOn)
        {
            return false;
        }

        var saysMore = FillIn(known.Lot, row);
        if (!saysMore && !known.Offer.Differs(row.Packing, row.Asking, row.Terms, row.State, row.StatedScore))
        {
            return false;
        }

        known.Offer.Revise(row.Packing, row.Asking, row.Terms, row.State, row.StatedScore, _case.ReceivedOn, _listId);
        known.Offer.FindBy(known.Lot);
        return true;
    }

    /// <summary>The offer of this reference; where both name a crop year, only one of the same crop, else it is a new lot.</summary>
    private KnownOffer? Known(OfferRow row) =>
        _known.GetValueOrDefault(SearchText.Of(row.Ref))?
            .Where(known => row.CropYear is null || known.Lot.CropYear is null || row.CropYear == known.Lot.CropYear)
            .MaxBy(known => known.Offer.FirstOfferedOn);

    /// <summary>The lot and the offer that an accepted row is, and its producer where that is a new one.</summary>
    public RowOutcome Make(OfferRow row)
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
