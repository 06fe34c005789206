namespace GreenLedger.Domain.Offers.Reading.Words;

/// <summary>French trade words of offer lists, from common use.</summary>
internal static class French
{
    public static ListWords Words { get; } = ListWords.Of("fr", """
        Ref: réf, référence, lot, lot n, n lot, n de lot, numéro de lot, code
        Name: nom, nom du lot, café, description, qualité, produit, désignation
        Producer: producteur, productrice, ferme, domaine, exploitation, plantation, station, station de lavage, coopérative, planteur, ferme producteur
        Country: pays, origine, pays d'origine
        Region: région, district, commune, département, zone, province, localité
        Varieties: variété, variétés, cultivar
        Process: procédé, traitement, processus, méthode, mode de traitement
        CropYear: récolte, année de récolte, campagne
        Grade: grade, classe, catégorie
        Screen: crible, calibre, tamis
        Altitude: altitude, alt, élévation
        StatedScore: score, note, note de tasse, note sca, points, points sca, tasse
        Bags: sacs, nombre de sacs, nb de sacs, nb sacs, n de sacs, quantité de sacs
        BagWeight: kg sac, kg par sac, poids par sac, poids du sac, poids sac
        Packaging: emballage, conditionnement
        Quantity: quantité, qté, volume
        NetWeight: poids net, kg nets, poids, poids kg, total kg, kilos
        Price: prix, prix fob, prix unitaire, tarif
        Differential: différentiel, diff
        FuturesMonth: échéance, mois à terme, terme
        Currency: devise, monnaie
        PriceUnit: unité, unité de prix
        Incoterm: condition de livraison, conditions
        Place: port, lieu, port d'embarquement, lieu de livraison
        ValidUntil: valable jusqu'au, validité, valide jusqu'au
        Availability: disponible, disponibilité, statut, embarquement
        Certificates: certification, certifications, certificat, certificats, label, labels
        IcoMark: marque oic, marque ico, oic
        Moisture: humidité, taux d'humidité
        Notes: notes, remarque, remarques, commentaires, observations, profil, notes de dégustation
        LeastBags: minimum, lot minimum, quantité minimum, quantité minimale, commande minimum, commande minimale, minimum sacs, sacs minimum
        warehouse: n entrepôt, n magasin, numéro d'entrepôt
        spot: en entrepôt, ex entrepôt, ex magasin, départ entrepôt, disponible en entrepôt
        sold: vendu, vendue, épuisé, indisponible
        withdrawn: retiré, annulé, non
        available: oui, disponible, libre
        valid: valable jusqu'au, valables jusqu'au, valide jusqu'au, validité
        crop: récolte, campagne
        total: total, totaux, somme, sous total
        bigbag: big bag, vrac
        bag: sac, sacs, carton, cartons, caisse, caisses
        cooperative: coopérative, coop, association
        station: station de lavage, station
        farm: ferme, domaine, plantation
        outright: prix
        January: janvier, janv, jan
        February: février, févr, fév
        March: mars
        April: avril, avr
        May: mai
        June: juin
        July: juillet, juil
        August: août
        September: septembre, sept
        October: octobre, oct
        November: novembre, nov
        December: décembre, déc
        """);
}
