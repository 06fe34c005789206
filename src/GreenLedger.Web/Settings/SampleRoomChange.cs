using GreenLedger.Data;
using GreenLedger.Data.Roasting;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Roasting;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Settings;

/// <summary>Days that a sample may stand at each step; null is no limit.</summary>
internal sealed record StandingDays(int? Asked, int? OnTheWay, int? Received, int? Graded, int? Roasted, int? Cupped);

internal sealed record GradingChoice(DefectFractions Fractions, string? MoistureMethod);

/// <summary>States the settings of the sample room, for the page and for scripts.</summary>
internal static class SampleRoomChange
{
    /// <param name="version">Of the habits, as they were read; 0 where the house had stated none.</param>
    public static async Task StateAsync(
        this LedgerContext db, int version, StandingDays days, GradingChoice choice, RoastWindows windows, DateTimeOffset at, CancellationToken cancellationToken)
    {
        var habits = await db.SampleHabits.OfHouseAsync(cancellationToken);
        if (db.Entry(habits).State == EntityState.Detached)
        {
            db.Add(habits);
        }
        else
        {
            db.Entry(habits).Property(one => one.Version).OriginalValue = version;
        }

        habits.AllowDays(days.Asked, days.OnTheWay, days.Received, days.Graded, days.Roasted, days.Cupped);
        var grading = await db.GradingHabits.OfHouseAsync(cancellationToken);
        if (db.Entry(grading).State == EntityState.Detached)
        {
            db.Add(grading);
        }

        grading.Grade(choice.Fractions, choice.MoistureMethod);
        var stated = new RoastProtocol(windows, at);
        if ((await db.RoastProtocols.NewestAsync(cancellationToken))?.Windows != stated.Windows)
        {
            db.Add(stated);
        }
    }
}
