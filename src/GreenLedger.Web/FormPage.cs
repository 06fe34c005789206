using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web;

/// <summary>
/// A page with a form bound as <c>Input</c>. A form that is not valid and a rule that refuses both end in the page as
/// it was typed, with the message beside its field; a change that somebody else was faster with shows both versions.
/// Pages override <see cref="LoadAsync"/> with what they show besides the form.
/// </summary>
public abstract class FormPage : PageModel
{
    private const string Form = "Input";
    private const string SomebodyWasFaster =
        "Somebody saved this record while you had it open. Nothing of yours is lost: compare both versions below, "
        + "change your entries where theirs should stand, and save again.";

    /// <summary>What differs between the typed and the stored record when somebody was faster; else empty.</summary>
    public IReadOnlyList<Difference> Differences { get; private set; } = [];

    [NonHandler] // By its name it would be one, for a method PAGE that no browser sends.
    public override async Task OnPageHandlerExecutionAsync(
        PageHandlerExecutingContext context, PageHandlerExecutionDelegate next)
    {
        if (!await IsThereAsync(HttpContext.RequestAborted))
        {
            context.Result = NotFound();
            return;
        }

        ForgetFormOfOtherAct(context);
        if (IsJudged && !ModelState.IsValid && HttpMethods.IsPost(Request.Method))
        {
            context.Result = await AgainAsync();
            return;
        }

        var done = await next();
        switch (done.Exception)
        {
            case RuleBrokenException broken:
                ModelState.AddModelError(FieldOf(broken.Field), broken.Message);
                break;
            case DbUpdateConcurrencyException faster:
                await ShowBothAsync(faster);
                break;
            case DbUpdateException taken when taken.IsTaken():
                ModelState.AddModelError("", "Somebody saved the same a moment ago, or what this stands on is gone. Nothing of yours is lost: look at the list, then save again if it is still needed.");
                break;
            default:
                return;
        }

        done.ExceptionHandled = true;
        done.Result = await AgainAsync();
    }

    /// <summary>Reads what the page shows besides its form; called again before a refused form is shown.</summary>
    protected virtual Task LoadAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <summary>Whether <see cref="LoadAsync"/> found what the address names: without it no refused form is shown.</summary>
    protected virtual bool IsThere => true;

    /// <summary>Whether what the address names is there, asked before anything else: without it there is no page, however the form was filled in.</summary>
    protected virtual Task<bool> IsThereAsync(CancellationToken cancellationToken) => Task.FromResult(true);

    /// <summary>Whether the form has to be filled in for this act; an act that only shows more of the form stores nothing.</summary>
    protected virtual bool IsJudged => true;

    /// <summary>Says that the form was opened on this version of the record: an older one is refused when saving.</summary>
    protected void OpenedOn(object record, int version) =>
        Ledger.Entry(record).Property("Version").OriginalValue = version;

    /// <summary>A sentence shown on the next page.</summary>
    protected void Say(string sentence) => TempData["Said"] = sentence;

    private LedgerContext Ledger => HttpContext.RequestServices.GetRequiredService<LedgerContext>();

    /// <summary>
    /// A handler with a name and none of the form's fields in the request is not judged by the form. (Without any
    /// field that begins with <c>Input.</c> the framework binds the form from bare names, and says so in ModelState.)
    /// </summary>
    private void ForgetFormOfOtherAct(PageHandlerExecutingContext context)
    {
        var isNamed = !string.IsNullOrEmpty(context.HandlerMethod?.Name);
        var sent = Request.HasFormContentType ? Request.Form : null;
        var sendsForm = sent is not null
            && (sent.Keys.Any(IsField) || sent.Files.Any(file => IsField(file.Name)));
        if (!isNamed || sendsForm)
        {
            return;
        }

        var parameters = context.ActionDescriptor.Parameters.Select(parameter => parameter.Name);
        var members = (GetType().GetProperty(Form)?.PropertyType.GetProperties() ?? [])
            .Select(member => member.Name)
            .Except(parameters, StringComparer.OrdinalIgnoreCase)
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var key in ModelState.Keys.Where(key => key == Form || IsField(key) || members.Contains(key)).ToList())
        {
            ModelState.Remove(key);
        }
    }

    private static bool IsField(string key) =>
        key.StartsWith(Form + ".", StringComparison.OrdinalIgnoreCase)
        || key.StartsWith(Form + "[", StringComparison.OrdinalIgnoreCase);

    private async Task<IActionResult> AgainAsync()
    {
        Ledger.ChangeTracker.Clear();
        if (!await IsThereAsync(HttpContext.RequestAborted))
        {
            return NotFound();
        }

        await LoadAsync(HttpContext.RequestAborted);
        return IsThere ? Page() : NotFound();
    }

    /// <summary>
    /// The rule names a Domain member; the field has its name, perhaps with a unit behind it (<c>WeightKg</c>).
    /// A path such as <c>Legs[2].Amount</c> is taken as it is.
    /// </summary>
    private string FieldOf(string? member)
    {
        if (string.IsNullOrEmpty(member) || GetType().GetProperty(Form)?.PropertyType is not { } form)
        {
            return "";
        }

        if (member.Contains('.') || member.Contains('['))
        {
            return Form + "." + member;
        }

        var field = form.GetProperties()
            .Where(property => property.Name.StartsWith(member, StringComparison.Ordinal))
            .MinBy(property => property.Name.Length);
        return field is null ? "" : Form + "." + field.Name;
    }

    /// <summary>Keeps what was typed, says what is stored now, and lets the next save go on from there.</summary>
    private async Task ShowBothAsync(DbUpdateConcurrencyException faster)
    {
        (Differences, var version) = await Difference.BetweenAsync(faster, HttpContext.RequestAborted);
        ModelState.AddModelError("", SomebodyWasFaster);
        if (version is not null
            && GetType().GetProperty(Form)?.GetValue(this) is { } form
            && form.GetType().GetProperty("Version") is { CanWrite: true } property)
        {
            ModelState.Remove(Form + ".Version");
            property.SetValue(form, version.Value);
        }
    }
}
