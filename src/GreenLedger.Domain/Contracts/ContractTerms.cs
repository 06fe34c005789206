using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Contracts;

/// <summary>What both sides agree on in one version of a contract: written whole, and never changed once it is signed.</summary>
/// <param name="Buyer">The house, as it is called on this version.</param>
/// <param name="Seller">The supplier, as it is called on this version.</param>
/// <param name="Lots">What is bought: bags times the net weight of a bag.</param>
/// <param name="Quality">What the coffee is to be.</param>
/// <param name="Price">An outright price, or how it is to be fixed.</param>
/// <param name="Delivery">Delivery rule, place and shipment period.</param>
/// <param name="Weights">Whose weights count, and what may differ.</param>
/// <param name="Approval">What approval of a sample is asked for.</param>
/// <param name="Payment">How it is paid, as the parties write it.</param>
/// <param name="Certificates">Short names of the schemes: organic, fairtrade.</param>
/// <param name="Form">The standard form referred to.</param>
/// <param name="Note">What else was agreed.</param>
public sealed record ContractTerms(
    string Buyer,
    string Seller,
    IReadOnlyList<ContractedLot> Lots,
    QualityTerms Quality,
    PriceTerms Price,
    DeliveryTerms Delivery,
    WeightTerms Weights,
    ApprovalTerms Approval,
    string Payment,
    IReadOnlyList<string> Certificates,
    FormTerms Form,
    string? Note)
{
    /// <summary>Net weight of all lots.</summary>
    public Weight Net() => Lots.Aggregate(Weight.Zero, (sum, lot) => sum + lot.Net());

    /// <summary>Trimmed, and held against the rules that every version keeps.</summary>
    /// <exception cref="RuleBrokenException">Something is missing or cannot be.</exception>
    public ContractTerms Checked()
    {
        Rule.Require(Lots.Count > 0, "Choose at least one lot to buy.", nameof(Lots));
        Rule.Require(Lots.Select(lot => lot.LotId).Distinct().Count() == Lots.Count, "A lot stands on a contract once: put its bags together.", nameof(Lots));
        return this with
        {
            Buyer = Rule.Text(Buyer, "The buyer", field: nameof(Buyer)),
            Seller = Rule.Text(Seller, "The seller", field: nameof(Seller)),
            Lots = [.. Lots.Select((lot, index) => lot.Checked(index))],
            Quality = Quality.Checked(),
            Price = Price.Checked(Net()),
            Delivery = Delivery.Checked(),
            Weights = Weights.Checked(),
            Approval = Approval.Checked(),
            Payment = Rule.Text(Payment, "The payment", field: nameof(Payment)),
            Certificates = [.. Certificates.Select(name => name.Trim().ToLowerInvariant()).Where(name => name.Length > 0).Distinct().Order(StringComparer.Ordinal)],
            Form = Form.Checked(),
            Note = Rule.OptionalText(Note, "The note", 2000, nameof(Note)),
        };
    }
}

/// <summary>One lot on a contract, called as it was when the version was written.</summary>
public sealed record ContractedLot(Id<Lot> LotId, string Ref, string Name, string? CropYear, int Bags, Weight BagWeight)
{
    public Weight Net() => BagWeight * Bags;

    internal ContractedLot Checked(int index)
    {
        Rule.Require(Bags is > 0 and <= 100_000, $"How many bags of {Ref}? At least one.", $"Lots[{index}].Bags");
        Rule.Require(BagWeight > Weight.Zero && BagWeight.Kilograms <= 2000m, $"A bag of {Ref} holds more than 0 and at most 2,000 kg net.", $"Lots[{index}].BagWeightKg");
        return this;
    }
}

/// <summary>What the coffee is to be: in words, the score that it is to reach on a named form, and other figures it is to keep.</summary>
/// <param name="Limits">Null where none are agreed.</param>
public sealed record QualityTerms(string Description, Score? LeastScore, LimitTerms? Limits = null)
{
    internal QualityTerms Checked()
    {
        Rule.Require(LeastScore is null or { Points: >= 0m and <= 100m }, "The least score lies between 0 and 100 points.", nameof(LeastScore));
        return this with
        {
            Description = Rule.Text(Description, "The description of the quality", 1000, nameof(Description)),
            Limits = Limits is { } limits && !limits.IsEmpty() ? limits.Checked() : null,
        };
    }
}

/// <summary>Delivery rule, its named place, and the first and last day of shipment.</summary>
public sealed record DeliveryTerms(Incoterm Incoterm, string Place, DateOnly ShipFrom, DateOnly ShipUntil)
{
    internal DeliveryTerms Checked()
    {
        Rule.Require(Enum.IsDefined(Incoterm), "Choose the delivery rule.", nameof(Incoterm));
        Rule.Day(ShipFrom, nameof(ShipFrom));
        Rule.Day(ShipUntil, nameof(ShipUntil));
        Rule.Require(ShipFrom <= ShipUntil, "The shipment period ends before it begins: please check both days.", nameof(ShipUntil));
        return this with { Place = Rule.Text(Place, "The place of the delivery rule", field: nameof(Place)) };
    }
}

/// <summary>Whose weighing counts for the invoice.</summary>
public enum WeightBasis
{
    Shipped = 0,
    Landed = 1,
}

/// <summary>Whose weights count, the loss that is not refunded, and by how much the quantity may differ.</summary>
/// <param name="Franchise">Only a loss beyond this share of the shipped weight is refunded.</param>
/// <param name="Tolerance">More or less of the quantity, by the seller's fault or not as the standard form says.</param>
public sealed record WeightTerms(WeightBasis Basis, Percent Franchise, Percent Tolerance)
{
    internal WeightTerms Checked()
    {
        Rule.Require(Enum.IsDefined(Basis), "Say whether shipped or landed weights count.", nameof(Basis));
        Rule.Require(Franchise.Points is >= 0m and <= 10m, "The franchise lies between 0 and 10 %.", nameof(Franchise));
        Rule.Require(Tolerance.Points is >= 0m and <= 20m, "The tolerance lies between 0 and 20 %.", nameof(Tolerance));
        return this;
    }
}

/// <summary>Whether a pre-shipment sample must be approved, and what its refusal means (handbook, trade 4.3).</summary>
public enum ApprovalRule
{
    /// <summary>Quality is held against the description alone.</summary>
    None = 0,

    /// <summary>After a refusal the seller may send a replacement sample, up to an agreed number of samples.</summary>
    Replace = 1,

    /// <summary>No approval, no sale: a refusal cancels the contract.</summary>
    Cancel = 2,
}

/// <param name="Rule">What is asked for.</param>
/// <param name="MostSamples">With replacement: how many samples of a lot may be sent in all.</param>
/// <param name="By">The day by which the sample is to be approved or refused.</param>
public sealed record ApprovalTerms(ApprovalRule Rule, int? MostSamples, DateOnly? By)
{
    public bool IsAsked() => Rule != ApprovalRule.None;

    internal ApprovalTerms Checked()
    {
        Domain.Rule.Require(Enum.IsDefined(Rule), "Say what approval is asked for.", "ApprovalRule");
        Domain.Rule.Require(Rule != ApprovalRule.Replace || MostSamples is >= 2 and <= 9, "With replacement, two to nine samples of a lot may be sent in all.", nameof(MostSamples));
        return this with { MostSamples = Rule == ApprovalRule.Replace ? MostSamples : null, By = Rule == ApprovalRule.None ? null : By };
    }
}

/// <summary>What the days for weighing run from (handbook, trade 4.1).</summary>
public enum WeighingStart
{
    /// <summary>The last of the goods left the ship.</summary>
    Discharge = 0,

    /// <summary>They could be weighed.</summary>
    Availability = 1,
}

public static class WeighingStarts
{
    public static string Word(this WeighingStart start) => start switch
    {
        WeighingStart.Discharge => "discharge",
        WeighingStart.Availability => "availability of the goods",
        _ => throw new ArgumentOutOfRangeException(nameof(start)),
    };
}

/// <summary>
/// The standard form that a contract refers to, with the days that it gives for claims as they stood: a later edition does
/// not move them. Calendar days, the day of the event that they run from is day 0.
/// </summary>
/// <param name="QualityFromClearance">The days of a quality claim run from discharge or from clearance by every authority, whichever is later.</param>
/// <param name="WeighFrom">What the days for weighing run from.</param>
public sealed record FormTerms(
    string Name, string Arbitration, int? WeighWithinDays, int? QualityClaimDays, int? OtherClaimDays, bool QualityFromClearance = false, WeighingStart WeighFrom = WeighingStart.Discharge)
{
    /// <summary>What the days of a quality claim run from, in words.</summary>
    public string QualityStart() => QualityFromClearance ? "discharge or clearance, whichever is later" : "discharge";

    internal FormTerms Checked()
    {
        Days(WeighWithinDays, nameof(WeighWithinDays));
        Days(QualityClaimDays, nameof(QualityClaimDays));
        Days(OtherClaimDays, nameof(OtherClaimDays));
        Rule.Require(Enum.IsDefined(WeighFrom), "Choose what the days for weighing run from.", nameof(WeighFrom));
        return this with
        {
            Name = Rule.Text(Name, "The standard form", field: "FormName"),
            Arbitration = Rule.Text(Arbitration, "The place of arbitration", field: nameof(Arbitration)),
        };
    }

    private static void Days(int? days, string field) => Rule.Require(days is null or (>= 0 and <= 400), "Days lie between 0 and 400.", field);
}
