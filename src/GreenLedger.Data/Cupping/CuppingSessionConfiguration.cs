using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Cupping;

internal sealed class CuppingSessionConfiguration :
    IEntityTypeConfiguration<CuppingSession>, IEntityTypeConfiguration<SessionSample>, IEntityTypeConfiguration<KeyOpening>
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
        builder.HasKey(Session, nameof(SessionSample.SampleId));
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
}
