namespace GreenLedger.Domain.Offers.Reading.Words;

/// <summary>German trade words of offer lists, from common use.</summary>
internal static class German
{
    public static ListWords Words { get; } = ListWords.Of("de", """
        Ref: ref, referenz, partie, partie nr, los, losnummer, los nr, lager nr, lagernummer, nr, nummer, artikelnummer, artikel nr, position, pos
        Name: name, bezeichnung, kaffee, beschreibung, qualität, produkt, artikel
        Producer: produzent, produzentin, farm, station, waschstation, kooperative, plantage, erzeuger, hacienda, region station, station region, farm produzent
        Country: land, herkunft, ursprung, ursprungsland, herkunftsland
        Region: region, gebiet, provinz, bezirk, anbaugebiet, ort
        Varieties: varietät, varietäten, sorte, sorten
        Process: aufbereitung, aufbereitungsart, verarbeitung, prozess
        CropYear: ernte, erntejahr, saison
        Grade: grad, klasse, sortierung, güte
        Screen: sieb, siebgröße, größe, bohnengröße
        Altitude: höhe, anbauhöhe, höhenlage, m ü m, m ü nn
        StatedScore: punkte, sca punkte, bewertung, cup score, tasse, punktzahl, sca
        Bags: säcke, sack, anzahl säcke, anzahl sack, sackzahl
        BagWeight: kg sack, kg pro sack, kg je sack, gewicht kg sack, sackgewicht, gewicht pro sack, gewicht je sack
        Packaging: verpackung, gebinde
        Quantity: menge, anzahl, bestand
        NetWeight: nettogewicht, netto kg, kg netto, netto, gewicht, gewicht kg, gesamt kg, gesamtgewicht, menge kg
        Price: preis, preis kg, verkaufspreis, stückpreis
        Differential: differenz, differential, aufschlag, prämie
        FuturesMonth: terminmonat, börsenmonat, termin
        Currency: währung
        PriceUnit: preiseinheit, einheit
        Incoterm: lieferbedingung, lieferbedingungen
        Place: hafen, ort der lieferung, verladehafen, lagerort, lager
        ValidUntil: gültig bis, gültigkeit
        Availability: verfügbar, verfügbarkeit, status, verladung, lieferbar, lieferbar ab
        Certificates: zertifikat, zertifikate, zertifizierung, siegel
        IcoMark: ico marke, ico nummer
        Moisture: feuchte, feuchtigkeit, wassergehalt
        Notes: bemerkung, bemerkungen, anmerkung, anmerkungen, notizen, kommentar, hinweis, profil, geschmack
        LeastBags: mindestmenge, mindestabnahme, mindestbestellmenge, mindestbestellung, kleinste menge, minimum, mindestens sack
        warehouse: lager nr, lagernummer
        spot: ab lager, loco, lagerware, spot
        sold: verkauft, ausverkauft, nicht verfügbar
        withdrawn: zurückgezogen, storniert, nein
        available: ja, verfügbar, frei, lieferbar
        valid: gültig bis, gültigkeit
        crop: ernte, erntejahr
        total: total, summe, gesamt, zwischensumme
        bigbag: big bag, bigbag, lose ware
        bag: sack, säcke, karton, kartons
        cooperative: kooperative, genossenschaft, coop
        station: waschstation, station
        farm: farm, plantage, finca
        outright: preis
        January: januar, jänner, jan
        February: februar, feb
        March: märz, mrz, maerz
        April: april, apr
        May: mai
        June: juni, jun
        July: juli, jul
        August: august, aug
        September: september, sept, sep
        October: oktober, okt
        November: november, nov
        December: dezember, dez
        """);
}
