using System.Text;
using GreenLedger.Documents.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Samples;
using UglyToad.PdfPig;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace GreenLedger.Documents.Tests.Samples;

public sealed class SampleLabelsTests
{
    private const string House = "Harbour & Hill Roasters";
    private const double PointsInMillimetre = 72 / 25.4;

    private static readonly PrintedLabel[] Four = [Label("ACDEF"), Label("GHJKM"), Label("NPQRT"), Label("UVWXY")];

    public static TheoryData<string> Codes => [.. LabelSheet.Usual.Select(sheet => sheet.Code)];

    /// <summary>The picture is made by poppler and read by another library than the one that made the code.</summary>
    [Theory, MemberData(nameof(Codes))]
    public async Task The_code_on_every_kind_of_label_is_read_back_as_its_address(string code)
    {
        var sheet = LabelSheet.Find(code)!;

        var file = Written(sheet, [Four[0]]);

        Assert.Equal(Four[0].Address, await ScannedAsync(file));
    }

    [Fact]
    public void A_label_says_its_code_and_the_house_and_nothing_else()
    {
        using var pdf = PdfDocument.Open(Written(LabelSheet.Find("single-62x29")!, Four));

        Assert.Equal(4, pdf.NumberOfPages);
        Assert.Equal($"ACDEF {House}", string.Join(" ", pdf.GetPage(1).GetWords().Select(word => word.Text)));
    }

    /// <summary>Worked by hand: 24 places of 3 × 8; from place 23 on, two fit on the first sheet and two go on the next.</summary>
    [Fact]
    public void A_sheet_that_was_begun_is_filled_from_its_first_free_place()
    {
        using var pdf = PdfDocument.Open(Written(LabelSheet.Find("a4-3x8")!, Four, from: 23));

        Assert.Equal(2, pdf.NumberOfPages);
        Assert.Equal(["ACDEF", "GHJKM"], CodesOn(pdf, 1));
        Assert.Equal(["NPQRT", "UVWXY"], CodesOn(pdf, 2));
        // Place 23 is the second of the eighth row: 70 to 140 mm from the left, 259.5 to 296.5 mm from the top.
        var first = pdf.GetPage(1).GetWords().Single(word => word.Text == "ACDEF").BoundingBox;
        Assert.InRange(first.Left / PointsInMillimetre, 70, 140);
        Assert.InRange(297 - first.Bottom / PointsInMillimetre, 259.5, 296.5);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(25)]
    public void A_place_that_the_sheet_does_not_have_is_refused(int from) =>
        Assert.Equal("From", Assert.Throws<RuleBrokenException>(() => Written(LabelSheet.Find("a4-3x8")!, Four, from)).Field);

    private static PrintedLabel Label(string code) => new(code, $"https://ledger.harbour-hill.example/s/{code}");

    private static byte[] Written(LabelSheet sheet, IReadOnlyList<PrintedLabel> labels, int from = 1)
    {
        using var stream = new MemoryStream();
        SampleLabels.Write(sheet, labels, from, House, stream);
        return stream.ToArray();
    }

    private static IEnumerable<string> CodesOn(PdfDocument pdf, int page) =>
        pdf.GetPage(page).GetWords().Select(word => word.Text).Where(word => Four.Any(label => label.Code == word));

    private static async Task<string?> ScannedAsync(byte[] pdf)
    {
        var name = Path.Combine(Path.GetTempPath(), $"label-{Guid.NewGuid():N}");
        try
        {
            await File.WriteAllBytesAsync(name + ".pdf", pdf, TestContext.Current.CancellationToken);
            await InstalledProgram.RunAsync("pdftoppm", "poppler-utils", "-gray", "-r", "200", "-singlefile", name + ".pdf", name);
            var (width, height, grey) = Grey(await File.ReadAllBytesAsync(name + ".pgm", TestContext.Current.CancellationToken));
            var picture = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(grey, width, height, RGBLuminanceSource.BitmapFormat.Gray8)));
            return new QRCodeReader().decode(picture, new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true })?.Text;
        }
        finally
        {
            File.Delete(name + ".pdf");
            File.Delete(name + ".pgm");
        }
    }

    /// <summary>A binary PGM: P5, width, height and 255 in text, then one byte a pixel.</summary>
    private static (int Width, int Height, byte[] Grey) Grey(byte[] pgm)
    {
        var numbers = new List<int>();
        var at = 2;
        while (numbers.Count < 3)
        {
            var word = new StringBuilder();
            for (at++; pgm[at] > ' '; at++)
            {
                word.Append((char)pgm[at]);
            }

            numbers.Add(int.Parse(word.ToString(), System.Globalization.CultureInfo.InvariantCulture));
        }

        return (numbers[0], numbers[1], pgm[(at + 1)..]);
    }
}
