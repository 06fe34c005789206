using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Text.Json;
using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>One cupper's sheet for one code. The server adds up; the script only shows it while one types.</summary>
public sealed class SheetModel(LedgerContext db, BlindTableQuery query, TimeProvider clock) : FormPage
{
    private static readonly JsonSerializerOptions Camel = new(JsonSerializerDefaults.Web);

    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    [BindProperty(SupportsGet = true, Name = "blindCode")]
    public string Code { get; set; } = "";

    [BindProperty]
    public SheetForm Input { get; set; } = new();

    public BlindTable Found { get; private set; } = null!;

    public IReadOnlyList<SelectListItem> Cuppers { get; private set; } = [];

    public decimal? StoredTotal { get; private set; }

    /// <summary>The cupper whose sheets the links lead to; null for the reader's own.</summary>
    public Id<Person>? ChosenCupper => Leads && Input.CupperId != User.FindPerson() ? Input.CupperId : null;

    public string RulesJson => JsonSerializer.Serialize(Found.Form.Rules, Camel);

    public async Task<IActionResult> OnGetAsync(Id<Person>? cupper, CancellationToken cancellationToken)
    {
        Input.CupperId = Leads && cupper is not null ? cupper : User.FindPerson();
        if (!await FindAsync(cancellationToken))
        {
            return NotFound();
        }

        if (Found.IsClosed)
        {
            return RedirectToPage("Result", new { Id });
        }

        if (Found.Mine.GetValueOrDefault(Code) is { } mine)
        {
            Input.Show(Found.Form.Rules, mine);
        }
        else
        {
            Input.Start(Found.Form.Rules, Found.CupsPerSample);
        }

        await ListCuppersAsync(cancellationToken);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await using var turn = await db.TakeTurnAsync(Id, cancellationToken);
        var session = await db.CuppingSessions.Whole().SingleOrDefaultAsync(session => session.Id == Id, cancellationToken);
        if (session is null || session.Samples.All(sample => sample.Code != Code))
        {
            return NotFound();
        }

        var marks = Input.Read(session.Form.Rules, Complain);
        foreach (var (key, message) in marks?.Faults(session.Form.Rules, session.CupsPerSample) ?? [])
        {
            Complain(FieldOf(session.Form.Rules, key), key, message);
        }

        if (marks is null || !ModelState.IsValid)
        {
            await LoadAsync(cancellationToken);
            return Page();
        }

        var id = Leads ? Input.CupperId ?? User.Person() : User.Person();
        var cupper = await db.People.SingleAsync(person => person.Id == id, cancellationToken);
        if (session.SheetOf(session.Poured(Code), cupper.Id) is { } earlier)
        {
            OpenedOn(earlier, Input.Version);
            if (!earlier.IsReopened)
            {
                session.Reopen(Code, cupper.Id, Input.Reason ?? "", User.Person(), clock.GetUtcNow());
            }
        }

        var sheet = session.HandIn(Code, cupper, marks, clock.GetUtcNow());
        sheet.Remark((Input.Descriptors ?? "").Split(',', ';'), Input.Note, Input.StatedTotal);
        await db.DraftOfAsync(session, sheet, Code, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        Say(string.Join(' ', SheetTotal.Doubts(session.Form.Rules, marks, session.CupsPerSample).Prepend($"The sheet for {Code} is in: {sheet.Total.Points:0.00} points.")));
        return ChosenCupper is { } chosen
            ? RedirectToPage("Sheet", new { Id, blindCode = session.Samples.FirstOrDefault(sample => session.SheetOf(sample, chosen) is null)?.Code ?? Code, cupper = chosen })
            : RedirectToPage("Table", new { Id });
    }

    /// <summary>What stands in a field, as it was typed.</summary>
    public string TypedOf(string field, string key) =>
        ModelState.TryGetValue($"Input.{field}[{key}]", out var entry) && entry.AttemptedValue is { } typed ? typed : Input.Text(field, key);

    /// <summary>What is wrong with a field; null when nothing is.</summary>
    public string? ErrorOf(string field, string key) =>
        ModelState.TryGetValue($"Input.{field}[{key}]", out var entry) && entry.Errors.Count > 0 ? entry.Errors[0].ErrorMessage : null;

    /// <summary>What was stored meanwhile where it differs from what is typed; null where there is no clash.</summary>
    public string? StoredOf(string field, string key)
    {
        if (Differences.Count == 0 || Found.Mine.GetValueOrDefault(Code) is not { } stored)
        {
            return null;
        }

        var theirs = new SheetForm();
        theirs.Show(Found.Form.Rules, stored);
        return theirs.Text(field, key) is var text && text != Input.Text(field, key) ? text : null;
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        await FindAsync(cancellationToken);
        await ListCuppersAsync(cancellationToken);
    }

    private bool Leads => User.MayWrite("Cupping, leading");

    private async Task<bool> FindAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, ChosenCupper ?? User.FindPerson(), cancellationToken) is not { } found
            || found.Samples.All(sample => sample.Code != Code))
        {
            return false;
        }

        Found = found;
        StoredTotal = found.Mine.GetValueOrDefault(Code)?.Total;
        return true;
    }

    private async Task ListCuppersAsync(CancellationToken cancellationToken)
    {
        if (Leads)
        {
            var people = await db.People.AsNoTracking().Where(person => person.IsActive).OrderBy(person => person.Name).ToListAsync(cancellationToken);
            Cuppers = [.. people.Select(person => new SelectListItem(person.Name, person.Id.ToString()))];
        }
    }

    private void Complain(string field, string key, string message) => ModelState.AddModelError($"Input.{field}[{key}]", message);

    private static string FieldOf(FormRules rules, string key) =>
        rules.Deductions.Any(line => line.Key == key) ? nameof(SheetForm.DeductedCups)
        : rules.CupCounted.Any(line => line.Key == key) ? nameof(SheetForm.GoodCups)
        : nameof(SheetForm.Marks);

    public sealed class SheetForm
    {
        [Display(Name = "Cupper")]
        public Id<Person>? CupperId { get; set; }

        /// <summary>Of the sheet as it was opened; 0 while there is none.</summary>
        public int Version { get; set; }

        public Dictionary<string, decimal?> Marks { get; set; } = [];

        public Dictionary<string, int?> GoodCups { get; set; } = [];

        public Dictionary<string, int?> DeductedCups { get; set; } = [];

        public string? Descriptors { get; set; }

        [Display(Name = "Stated total")]
        [Range(0, 100, ErrorMessage = "A total lies between 0 and 100 points.")]
        public decimal? StatedTotal { get; set; }

        public string? Note { get; set; }

        /// <summary>Why a sheet that was handed in is changed; it stays as it was, with the reason.</summary>
        [Display(Name = "Reason for changing it")]
        public string? Reason { get; set; }

        internal void Start(FormRules rules, int cups)
        {
            GoodCups = rules.CupCounted.ToDictionary(line => line.Key, _ => (int?)cups);
            DeductedCups = rules.Deductions.ToDictionary(line => line.Key, _ => (int?)0);
        }

        internal void Show(FormRules rules, BlindSheet sheet)
        {
            Marks = rules.Scales.Zip(sheet.Marks.Marks).ToDictionary(pair => pair.First.Key, pair => (decimal?)pair.Second.Points);
            GoodCups = rules.CupCounted.Zip(sheet.Marks.GoodCups).ToDictionary(pair => pair.First.Key, pair => (int?)pair.Second);
            DeductedCups = rules.Deductions.Zip(sheet.Marks.DeductedCups).ToDictionary(pair => pair.First.Key, pair => (int?)pair.Second);
            Version = sheet.Version;
            Descriptors = string.Join(", ", sheet.Descriptors);
            StatedTotal = sheet.StatedTotal;
            Note = sheet.Note;
        }

        internal string Text(string field, string key) => field switch
        {
            nameof(Marks) => Marks.GetValueOrDefault(key)?.ToString("0.##", CultureInfo.InvariantCulture) ?? "",
            nameof(GoodCups) => GoodCups.GetValueOrDefault(key)?.ToString(CultureInfo.InvariantCulture) ?? "",
            _ => DeductedCups.GetValueOrDefault(key)?.ToString(CultureInfo.InvariantCulture) ?? "",
        };

        /// <summary>The marks as typed; null when one is missing or has more than two decimals, which is complained of.</summary>
        internal SheetMarks? Read(FormRules rules, Action<string, string, string> complain)
        {
            var whole = true;
            foreach (var line in rules.Scales.Where(line => Marks.GetValueOrDefault(line.Key) is not (>= 0m and <= 100m)))
            {
                complain(nameof(Marks), line.Key, $"{line.Name} is missing.");
                whole = false;
            }

            foreach (var line in rules.Scales.Where(line => Marks.GetValueOrDefault(line.Key) * 100m % 1m is not (null or 0m)))
            {
                complain(nameof(Marks), line.Key, $"{line.Name}: a mark has at most two decimals.");
                whole = false;
            }

            return whole
                ? new SheetMarks(
                    [.. rules.Scales.Select(line => Mark.Of(Marks[line.Key]!.Value))],
                    [.. rules.CupCounted.Select(line => GoodCups.GetValueOrDefault(line.Key) ?? -1)],
                    [.. rules.Deductions.Select(line => DeductedCups.GetValueOrDefault(line.Key) ?? 0)])
                : null;
        }
    }
}
