using GreenLedger.Domain.Offers;

namespace GreenLedger.SeedDemo.Offers;

/// <summary>Who is who at the suppliers: invented people, one or two at each, in the language that they write.</summary>
internal sealed class AddressBook(Draw draw)
{
    private static readonly Dictionary<string, string[]> Names = new()
    {
        ["en"] = ["Wanjiru Odera", "Selam Abay", "Grace Atuhaire", "Peter Kaupa", "Ruth Hollis", "Dewi Santika"],
        ["es"] = ["Ana Duque Ríos", "Mateo Zelaya", "Lucía Barrantes", "Tomás Quispe", "Elena Marroquín", "Julio Sandigo"],
        ["pt"] = ["Luís Prado", "Beatriz Fontenele", "Rui Camargo"],
        ["fr"] = ["Aline Uwera", "Didier Nkunzi", "Claire Mahoro"],
    };

    public IEnumerable<SupplierContact> Write(IEnumerable<Supplier> suppliers) => suppliers.SelectMany(Of);

    private IEnumerable<SupplierContact> Of(Supplier supplier)
    {
        var language = supplier.Language is { } own && SupplierContact.Languages.Contains(own) ? own : "en";
        var domain = supplier.Email!.Split('@')[1];
        var names = draw.Some(Names[language], draw.Between(1, 2));
        for (var i = 0; i < names.Count; i++)
        {
            var receives = names.Count == 1 ? Receives.Feedback | Receives.ArrivalReports | Receives.ContractPapers | Receives.Claims
                : i == 0 ? Receives.ContractPapers | Receives.Claims
                : Receives.Feedback | Receives.ArrivalReports;
            yield return new SupplierContact(supplier.Id, names[i], $"{(i == 0 ? "trade" : "quality")}@{domain}", language, receives);
        }
    }
}
