using System.Text.Json;
using GreenLedger.Domain.Cupping;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Cupping;

internal sealed class CuppingFormConfiguration : IEntityTypeConfiguration<CuppingForm>
{
    private static readonly JsonSerializerOptions Json = new() { IgnoreReadOnlyProperties = true };

    public void Configure(EntityTypeBuilder<CuppingForm> builder)
    {
        builder.Property(form => form.Id).ValueGeneratedNever();
        builder.Property(form => form.Code).HasMaxLength(40);
        builder.Property(form => form.Name).HasMaxLength(200);
        builder.Property(form => form.Edition).HasMaxLength(20);
        builder.Property(form => form.Reason).HasMaxLength(500);
        builder.HasIndex(form => new { form.Code, form.Edition, form.Revision }).IsUnique();
        builder.Property(form => form.Rules).HasConversion(rules => Write(rules), json => Read(json), new ValueComparer<FormRules>(
            (one, other) => Write(one!) == Write(other!), rules => Write(rules).GetHashCode(StringComparison.Ordinal), rules => rules));
    }

    private static string Write(FormRules rules) => JsonSerializer.Serialize(rules, Json);

    private static FormRules Read(string json) => JsonSerializer.Deserialize<FormRules>(json, Json)!;
}
