using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Domain.Tests.Pricing;

public sealed class CostSplitTests
{
    private static readonly CostStage[] Legs =
    [
        CostStage.Packing, CostStage.OriginLoading, CostStage.InlandCarriage, CostStage.ExportClearance, CostStage.OriginTerminal,
        CostStage.OnBoard, CostStage.Freight, CostStage.Insurance, CostStage.DestinationTerminal, CostStage.ImportClearance,
        CostStage.Duty, CostStage.Haulage, CostStage.Unloading,
    ];

    [Theory] // handbook, trade 3.1: its legs 1 to 12 in order, leg 1 as packing and loading; FAS from memory
    [InlineData(Incoterm.Exw, DeliveryPlace.Mill, "S B B B B B B B B B B B B")]
    [InlineData(Incoterm.Fca, DeliveryPlace.Mill, "S S B S B B B B B B B B B")]
    [InlineData(Incoterm.Fca, DeliveryPlace.OriginTerminal, "S S S S B B B B B B B B B")]
    [InlineData(Incoterm.Fas, DeliveryPlace.PortOfLoading, "S S S S S B B B B B B B B")]
    [InlineData(Incoterm.Fob, DeliveryPlace.PortOfLoading, "S S S S S S B B B B B B B")]
    [InlineData(Incoterm.Cfr, DeliveryPlace.PortOfDestination, "S S S S S S S B B B B B B")]
    [InlineData(Incoterm.Cif, DeliveryPlace.PortOfDestination, "S S S S S S S S B B B B B")]
    [InlineData(Incoterm.Cpt, DeliveryPlace.PortOfDestination, "S S S S S S S B B B B B B")]
    [InlineData(Incoterm.Cpt, DeliveryPlace.Inland, "S S S S S S S B S B B S B")]
    [InlineData(Incoterm.Cip, DeliveryPlace.PortOfDestination, "S S S S S S S S B B B B B")]
    [InlineData(Incoterm.Cip, DeliveryPlace.Inland, "S S S S S S S S S B B S B")]
    [InlineData(Incoterm.Dap, DeliveryPlace.Inland, "S S S S S S S S S B B S B")]
    [InlineData(Incoterm.Dpu, DeliveryPlace.Inland, "S S S S S S S S S B B S S")]
    [InlineData(Incoterm.Ddp, DeliveryPlace.Inland, "S S S S S S S S S S S S B")]
    public void Each_rule_splits_the_legs_as_in_the_handbook(Incoterm delivery, DeliveryPlace place, string payers)
    {
        var split = CostSplit.Of(delivery, place);

        Assert.Equal(payers, string.Join(' ', Legs.Select(stage => split.PayerOf(stage).ToString()[0])));
    }

    [Theory] // handbook, trade 3.2: what is added to reach "landed in my warehouse"
    [InlineData(Incoterm.Cif, "DestinationTerminal CarrierDocuments ImportClearance Inspection Duty Haulage Unloading WeighingAndSampling Finance Storage")]
    [InlineData(Incoterm.Dap, "ImportClearance Inspection Duty Unloading Finance Storage")]
    [InlineData(Incoterm.Dpu, "ImportClearance Inspection Duty Finance Storage")]
    [InlineData(Incoterm.Ddp, "Unloading Finance Storage")]
    [InlineData(Incoterm.ExWarehouse, "HandlingOut Haulage Finance")]
    public void The_buyer_adds_what_the_handbook_lists(Incoterm delivery, string stages)
    {
        var split = CostSplit.Of(delivery, CostSplit.UsualPlace(delivery));

        Assert.Equal(stages, string.Join(' ', CostStages.All.Where(stage => split.PayerOf(stage) == Payer.Buyer)));
    }

    [Fact] // handbook, trade 12 no. 34 and 35
    public void The_handbooks_three_questions_are_answered()
    {
        var fob = CostSplit.Of(Incoterm.Fob, DeliveryPlace.PortOfLoading);
        var cif = CostSplit.Of(Incoterm.Cif, DeliveryPlace.PortOfDestination);
        var ddp = CostSplit.Of(Incoterm.Ddp, DeliveryPlace.Inland);

        Assert.Equal(Payer.Buyer, fob.PayerOf(CostStage.Freight));
        Assert.Equal(Payer.Seller, cif.PayerOf(CostStage.Insurance));
        Assert.Equal((Payer.Seller, Payer.Buyer), (ddp.PayerOf(CostStage.Duty), ddp.PayerOf(CostStage.Unloading)));
    }

    [Fact]
    public void Every_rule_answers_every_stage_at_its_usual_place_and_at_any_other() =>
        Assert.All(Enum.GetValues<Incoterm>(), delivery =>
            Assert.All(Enum.GetValues<DeliveryPlace>(), place =>
            {
                var split = CostSplit.Of(delivery, place);

                Assert.Equal(delivery, split.Delivery);
                Assert.All(CostStages.All, stage => Assert.True(Enum.IsDefined(split.PayerOf(stage))));
            }));

    [Fact]
    public void Handling_out_is_for_coffee_bought_ex_warehouse_only() =>
        Assert.Equal(
            [Incoterm.ExWarehouse],
            CostSplit.All.Where(split => split.PayerOf(CostStage.HandlingOut) == Payer.Buyer).Select(split => split.Delivery));
}
