using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Tests.Offers;

public sealed class SupplierContactTests
{
    private static readonly Id<Supplier> Supplier = Id<Supplier>.New();

    [Fact]
    public void A_contact_is_sent_what_was_chosen_in_one_of_four_languages()
    {
        var contact = new SupplierContact(Supplier, " Ana Duque ", "ana@cerroalto.example", "es", Receives.Feedback | Receives.Claims);

        Assert.Equal(("Ana Duque", "feedback, claims"), (contact.Name, contact.Receives.Words()));
        Assert.Equal("nothing", Receives.Nothing.Words());
    }

    [Theory]
    [InlineData("ana", "es", "not an e-mail address")]
    [InlineData("Ana <ana@cerroalto.example>", "es", "not an e-mail address")]
    [InlineData("", "es", "e-mail address")]
    [InlineData("ana@cerroalto.example", "de", "Choose the language")]
    [InlineData("ana@cerroalto.example", null, "Choose the language")]
    public void What_cannot_be_used_is_refused_with_a_sentence(string email, string? language, string sentence)
    {
        var refusal = Assert.Throws<RuleBrokenException>(() => new SupplierContact(Supplier, "Ana Duque", email, language, Receives.Feedback));

        Assert.Contains(sentence, refusal.Message, StringComparison.Ordinal);
    }
}
