using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Samples;

public class LabelCodeTests
{
    [Fact]
    public void A_label_code_is_short_and_has_no_look_alikes()
    {
        var random = new Random(1);

        var codes = Enumerable.Range(0, 500).Select(_ => LabelCode.Draw(random)).ToList();

        Assert.All(codes, code => Assert.Matches("^[ACDEFGHJKMNPQRTUVWXY34679]{5}$", code));
        Assert.True(codes.Distinct().Count() > 495);
    }
}
