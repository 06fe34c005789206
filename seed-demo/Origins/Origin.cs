using System.Globalization;
using GreenLedger.Domain.Origins;

namespace GreenLedger.SeedDemo.Origins;

/// <summary>
/// What the scenario holds true of an origin. Countries, regions, varieties and grades are real; producers are
/// invented, and so are all figures, chosen to look like the trade's.
/// </summary>
/// <param name="Quality">Mean of the true score of its lots on the 100-point form.</param>
/// <param name="Premium">What a lot of 84 points costs above the futures level, as a logarithm: 0.1 is about 10 %.</param>
internal sealed record Origin(
    string Code,
    IReadOnlyList<string> Regions,
    IReadOnlyList<string> Varieties,
    IReadOnlyList<(string Process, double Weight)> Processes,
    double Quality,
    double Spread,
    double Premium,
    int AltitudeFrom,
    int AltitudeTo,
    IReadOnlyList<string> Grades,
    ProducerKind Kind,
    IReadOnlyList<string> Producers,
    IReadOnlyList<string> Words)
{
    // Code | regions | varieties | processes | quality | spread | premium | altitude | grades | kind | producers | words
    private const string Table = """
        BR|Sul de Minas,Cerrado Mineiro,Mantiqueira,Matas de Minas|Yellow Bourbon,Red Catuaí,Mundo Novo,Arara|natural 60,pulped natural 28,anaerobic natural 8,washed 4|82.6|1.3|0.02|900|1300|screen 17/18,screen 16 up,screen 14/16|Farm|Fazenda Serra Velada,Sítio Pedra do Sanhaço,Fazenda Lagoa Tardia,Sítio Córrego Calado,Fazenda Mata do Jacurutu,Fazenda Três Veredas Altas,Sítio Ipê Descalço,Fazenda Várzea do Tiziu,Sítio Olho de Neblina|chocolate,hazelnut,caramel,dried fig,peanut,red apple
        CO|Huila,Cauca,Nariño,Tolima|Caturra,Castillo,Colombia,Pink Bourbon,Tabi|washed 70,honey 10,natural 12,anaerobic washed 8|84.6|1.4|0.10|1500|2050|Excelso EP,Supremo|Farm|El Mirlo Callado,La Loma Quieta,Alto del Yarumo Viejo,Las Tres Goteras,La Ceiba Ladeada,El Balcón del Musgo,Los Tordos Mudos,La Vega Ceniza,El Zaguán Verde,Monte Aplomado|red apple,panela,orange,milk chocolate,blackberry,lime
        ET|Guji,Yirgacheffe,Sidama,Limu|Heirloom,74110,74112|washed 48,natural 42,anaerobic natural 10|86.1|1.3|0.04|1800|2250|Grade 1,Grade 2|WashingStation|Haro Dallacha,Wotira Qalo,Bensho Saddi,Gorbe Hamile,Shifa Oddo,Daraye Bultu,Melko Ganti,Arbe Sorsa,Kelloo Biqila|jasmine,bergamot,peach,blueberry,lemon,black tea,strawberry
        KE|Kirinyaga,Nyeri,Embu,Murang'a|SL28,SL34,"Ruiru 11",Batian|washed 92,anaerobic washed 8|86.6|1.2|0.11|1500|1900|AA,AB,PB|WashingStation|Kiamathuri Hill,Gathukeini Ridge,Thandumira,Rukanguri,Mutonyera,Gikuruwe,Ndaragwithi,Kanyokora Hill|blackcurrant,grapefruit,tomato,brown sugar,cranberry,rhubarb
        GT|Huehuetenango,Antigua,Atitlán,Cobán|Bourbon,Caturra,Pache,Catuaí|washed 82,natural 10,honey 8|84.5|1.2|0.12|1400|1900|SHB EP|Farm|Finca Cerro Encapotado,Finca La Peña Dormida,Finca Hoja Lluviosa,Finca Las Gradas Verdes,Finca Sombra del Chipe,Finca El Brocal Hondo,Finca Los Arrayanes Viejos|cocoa,orange,almond,red apple,toffee,plum
        HN|Copán,Marcala,Santa Bárbara,El Paraíso|Catuaí,Lempira,Parainema,IHCAFE 90|washed 74,natural 14,honey 12|83.5|1.2|0.05|1200|1700|SHG EP|Cooperative|Cooperativa Ladera del Ocote,Finca El Pinabete Manso,Cooperativa Niebla de Enero,Finca La Toronja Blanca,Finca Piedra Candil,Cooperativa Raíz y Teja|caramel,peach,vanilla,cocoa,mandarin
        CR|Tarrazú,West Valley,Central Valley|Caturra,Catuaí,Villa Sarchí,SL28|honey 28,red honey 14,washed 32,natural 18,black honey 8|85.4|1.3|0.20|1400|1900|SHB|Mill|Micro-beneficio Farol Tardío,Micro-beneficio Río Guarumo,Micro-beneficio Las Brumas de Abril,Micro-beneficio Tierra Sesgada,Micro-beneficio El Trapiche Azul|honey,peach,cherry,brown sugar,grape,orange
        PE|Cajamarca,Cusco,Amazonas,Junín|Typica,Caturra,Bourbon,Catimor|washed 86,honey 8,natural 6|84.0|1.2|0.07|1300|1900|Grade 1|Cooperative|Cooperativa Chacra Alta del Colibrí,Comité Agua Serena,Cooperativa Ceja de Nube,Comité Palo Rosado,Cooperativa Sendero del Ollantay Alto,Comité Tres Ichus|caramel,plum,cocoa,mandarin,walnut,raisin
        ID|Aceh Gayo,Lintong,Toraja,Bali Kintamani|Tim Tim,Ateng,S795,Sigarar Utang|wet-hulled 74,washed 12,natural 14|83.6|1.3|0.09|1200|1700|Grade 1,Grade 1 TP|Group|Kelompok Bukit Senyap,Kelompok Danau Tenang,Kelompok Rimba Pinus Tua,Kelompok Embun Merah,Kelompok Batu Lesung|cedar,dark chocolate,clove,tobacco,dried fig,sweet herbs
        RW|Nyamasheke,Huye,Gakenke,Rutsiro|Red Bourbon|washed 74,natural 18,honey 8|85.2|1.1|0.10|1600|2000|A1,A2|WashingStation|Gasumoye,Nyarukiba,Mukirenzi,Kabuyaga Hill,Rusizuka|orange,black tea,caramel,red currant,floral
        BI|Kayanza,Ngozi,Muramvya|Red Bourbon|washed 78,natural 22|85.0|1.2|0.07|1600|1950|FW 15+,FW 16+|WashingStation|Gasengabo,Buriziga,Munyezuba,Karunzera Hill|lime,brown sugar,hibiscus,black tea,cherry
        UG|Mount Elgon,Rwenzori,West Nile|SL14,SL28,Nyasaland|washed 55,natural 45|83.6|1.2|0.01|1400|2000|AA,AB,Drugar|Group|Busharege Growers,Kapsitora Slopes,Kyondwa Ridge,Namukwera Growers|raisin,cocoa,blackberry,brown sugar,dried mango
        NI|Jinotega,Matagalpa,Nueva Segovia|Caturra,Catuaí,Maracaturra|washed 68,natural 18,honey 14|83.6|1.1|0.05|1100|1600|SHG EP|Farm|Finca El Guácimo Cantor,Finca Rama Seca Alta,Finca La Bodega del Viento,Finca Luz de Ocotal|milk chocolate,caramel,orange,almond
        SV|Apaneca-Ilamatepec,Chalatenango|Pacamara,Bourbon,Pacas|washed 44,honey 24,natural 32|85.0|1.3|0.16|1200|1700|SHG|Farm|Hacienda Cumbre Clara,Finca Los Pericos Tardíos,Finca El Portezuelo Azul|plum,chocolate,tangerine,honey,floral
        PG|Western Highlands,Eastern Highlands|Typica,Arusha,Bourbon|washed 92,natural 8|83.4|1.2|0.06|1400|1800|A,X,Y1|Group|Kumbena Valley Growers,Waghira Growers,Nebila Ridge|sweet herbs,papaya,cocoa,brown sugar
        TZ|Mbeya,Kilimanjaro|Bourbon,Kent,N39|washed 94,natural 6|84.2|1.1|0.06|1400|1900|AA,AB,PB|Group|Ifumbira Growers,Usambora Hill,Mshikira Ridge|blackcurrant,lemon,black tea,caramel
        PA|Boquete,Volcán|Gesha,Catuaí,Pacamara|washed 40,natural 40,anaerobic natural 20|88.0|1.2|0.62|1500|1900|SHB|Farm|Finca Piedra Lisa,Finca El Pozo de los Vientos|jasmine,bergamot,papaya,honey,lime
        IN|Chikmagalur,Kodagu|S795,Selection 9,Kent|washed 64,natural 20,anaerobic washed 16|82.6|1.1|0.00|900|1300|Plantation A,Plantation AA|Farm|Hulivana Ridge Estate,Neralebagi Shade Estate,Kattevana Estate|cocoa,spice,walnut,raisin
        VN|Lâm Đồng,Đắk Lắk|Robusta|natural 62,washed 28,honey 10|79.6|1.1|0.02|500|900|screen 18,screen 16|Group|Tổ Hợp Đồi Sương,Tổ Hợp Suối Trầm,Tổ Hợp Nắng Muộn|dark chocolate,walnut,malt,cedar
        """;

    /// <summary>Where arabica does not grow here, lots are priced against the robusta market.</summary>
    public bool IsRobusta => Varieties is ["Robusta"];

    public static IReadOnlyDictionary<string, Origin> All { get; } = Table
        .Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        .Select(Read)
        .ToDictionary(origin => origin.Code);

    private static Origin Read(string line)
    {
        var parts = line.Split('|');
        return new Origin(
            parts[0], List(parts[1]), List(parts[2]), [.. List(parts[3]).Select(Process)],
            Number(parts[4]), Number(parts[5]), Number(parts[6]), (int)Number(parts[7]), (int)Number(parts[8]),
            List(parts[9]), Enum.Parse<ProducerKind>(parts[10]), List(parts[11]), List(parts[12]));
    }

    private static (string Process, double Weight) Process(string text)
    {
        var space = text.LastIndexOf(' ');
        return (text[..space], Number(text[space..]));
    }

    private static string[] List(string text) => [.. text.Split(',').Select(part => part.Trim('"', ' '))];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
