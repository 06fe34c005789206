using System.Net;
using System.Text;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Offers;

/// <summary>Three offers of "Row Traders" as a list: two of Kenya, one of Peru that is sold.</summary>
internal static class LoadedList
{
    private const string Text = "Ref;Lot;Country;Farm;Process;Score;Bags;kg/bag;US cents/lb;Status\n"
        + "R-1;Kiamati AA;Kenya;Kiamati;washed;87.5;40;60;412.5;available\nR-2;Kiamati AB;Kenya;Kiamati;natural;86;10;60;390;available\nR-3;Alto Verde;Peru;Alto Verde;washed;84;12;69;330;sold\n";

    /// <summary>Loads it by script; loaded again it changes nothing. Whoever calls disposes of the script.</summary>
    public static async Task<HttpClient> LoadAsync(HouseFixture house)
    {
        var script = await house.ScriptAsync(Role.Buyer);
        using var content = new MultipartFormDataContent
        {
            { new ByteArrayContent(Encoding.UTF8.GetBytes(Text)), "file", "rows.csv" },
            { new StringContent("Row Traders"), "supplier" },
            { new StringContent("true"), "commit" },
        };
        var answer = await script.PostAsync(new Uri("/api/offers/import", UriKind.Relative), content);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return script;
    }
}
