using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Cupping;

internal sealed class CuppingSessionConfiguration :
    IEntityTypeConfiguration<CuppingSession>, IEntityTypeConfiguration<SessionSample>, IEntityTypeConfiguration<KeyOpening>,
    IEntityTypeConfiguration<PanelMember>, IEntityTypeConfiguration<PouredFlight>
{
    private const string Session = "SessionId";

    public void Configure(EntityTypeBuilder<CuppingSession> builder)
    {
        builder.Property(session => session.Id).ValueGeneratedNever();
        builder.Property(session => session.Title).HasMaxLength(200);
        builder.HasIndex(session => session.HeldOn);
        builder.HasOne<StoredFile>().WithMany().HasForeignKey(session => session.SourceId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(session => session.Form).WithMany().HasForeignKey(session => session.FormId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(session => session.LaidOutBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(session => session.ClosedBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<TastingProtocol>().WithMany().HasForeignKey(session => session.ProtocolId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<DescriptiveForm>().WithMany().HasForeignKey(session => session.DescriptiveFormId).OnDelete(DeleteBehavior.Restrict);
        builder.Property(session => session.Water).HasMaxLength(200);
        builder.Ignore(session => session.Plan);
        builder.HasMany(session => session.Panel).WithOne().HasForeignKey(Session).IsRequired();
        builder.HasMany(session => session.Flights).WithOne().HasForeignKey(Session).IsRequired();
        builder.HasMany(session => session.Samples).WithOne().HasForeignKey(Session).IsRequired();
        builder.HasMany(session => session.Sheets).WithOne().HasForeignKey(sheet => sheet.SessionId);
        builder.HasMany(session => session.KeyOpenings).WithOne().HasForeignKey(Session).IsRequired();
        builder.HasOne(session => session.Result).WithOne().HasForeignKey<PanelResult>(result => result.SessionId);
    }

    public void Configure(EntityTypeBuilder<SessionSample> builder)
    {
        builder.ToTable("SessionSamples");
        builder.Property(sample => sample.SampleId).ValueGeneratedNever();
        builder.Property(sample => sample.Code).HasMaxLength(8);
        builder.Property(sample => sample.Repeat).ValueGeneratedNever();
        // Samples of sessions that were laid out before there were flights stood in one.
        builder.Property(sample => sample.Flight).HasDefaultValue(1).ValueGeneratedNever();
        builder.HasKey(Session, nameof(SessionSample.SampleId), nameof(SessionSample.Repeat));
        builder.HasIndex(Session, nameof(SessionSample.Code)).IsUnique();
        builder.HasOne<Sample>().WithMany().HasForeignKey(sample => sample.SampleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(sample => sample.LotId).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<KeyOpening> builder)
    {
        builder.ToTable("KeyOpenings");
        builder.Property(opening => opening.Id).ValueGeneratedNever();
        builder.HasOne<Person>().WithMany().HasForeignKey(opening => opening.By).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<PanelMember> builder)
    {
        builder.ToTable("PanelMembers");
        builder.Property(member => member.PersonId).ValueGeneratedNever();
        builder.PrimitiveCollection(member => member.ServingOrder);
        builder.HasKey(Session, nameof(PanelMember.PersonId));
        builder.HasOne<Person>().WithMany().HasForeignKey(member => member.PersonId).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<PouredFlight> builder)
    {
        builder.ToTable("PouredFlights");
        builder.Property(flight => flight.Number).ValueGeneratedNever();
        builder.HasKey(Session, nameof(PouredFlight.Number));
    }
}
