using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.People;
using GreenLedger.Web.Pages.Choosing;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Choosing;

/// <summary>Writes buying rules, for the page and for the API alike. Whoever calls saves.</summary>
public sealed class RulesActs(LedgerContext db, TimeProvider clock)
{
    /// <param name="id">Null for new rules.</param>
    /// <param name="form">As it was written.</param>
    /// <param name="by">Who wrote it.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    /// <returns>Null where there are no such rules.</returns>
    /// <exception cref="RuleBrokenException">The name is taken, or the terms contradict each other.</exception>
    public async Task<BuyingRules?> WriteAsync(Id<BuyingRules>? id, RulesForm form, Id<Person> by, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(form);
        var name = form.Name.Trim();
        var taken = await db.BuyingRules.AnyAsync(set => set.Name == name && set.Id != (id ?? default), cancellationToken);
        Rule.Require(!taken, "There are rules of this name already: choose another.", nameof(BuyingRules.Name));
        Rule.Require(await db.CuppingForms.AnyAsync(one => one.Id == form.FormId, cancellationToken), "Choose the form that these rules rank by.", nameof(RulesForm.FormId));
        var methods = await db.ProcessMethods.AsNoTracking().OrderBy(method => method.Name).ToListAsync(cancellationToken);
        Rule.Require(form.Processes.All(choice => methods.Exists(method => method.Id == choice.MethodId)), "There is no such process method: name them by their identities.", nameof(RulesForm.Processes));
        var (terms, at) = (form.Terms((await db.Houses.AsNoTracking().SingleAsync(cancellationToken)).Currency, methods), clock.GetUtcNow());
        if (id is null)
        {
            return db.Add(new BuyingRules(name, terms, by, at)).Entity;
        }

        if (await db.BuyingRules.Whole().FirstOrDefaultAsync(set => set.Id == id, cancellationToken) is not { } rules)
        {
            return null;
        }

        db.Entry(rules).Property(one => one.Version).OriginalValue = form.Version;
        rules.Edit(name, terms, by, at);
        return rules;
    }
}
