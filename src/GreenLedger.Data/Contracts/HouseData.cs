using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Contracts;

/// <summary>What must be unique in the house's own data behind contracts.</summary>
public static class HouseData
{
    /// <exception cref="RuleBrokenException">Another form has this name and edition.</exception>
    public static async Task RequireOneEditionAsync(this IQueryable<StandardForm> forms, StandardForm form, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(form);
        Rule.Require(
            !await forms.AnyAsync(other => other.Id != form.Id && other.Name == form.Name && other.Edition == form.Edition, cancellationToken),
            "There is such a form in this edition already: state another edition.", nameof(StandardForm.Edition));
    }

    /// <exception cref="RuleBrokenException">The market is closed on this day already.</exception>
    public static async Task RequireOpenAsync(this IQueryable<ExchangeHoliday> holidays, ExchangeHoliday day, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(day);
        Rule.Require(!await holidays.AnyAsync(one => one.Market == day.Market && one.On == day.On, cancellationToken), "This closing day is in the table already.", nameof(ExchangeHoliday.On));
    }
}
