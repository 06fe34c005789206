using System.Globalization;
using GreenLedger.Domain.Cupping;
using GreenLedger.SeedDemo.People;
using GreenLedger.SeedDemo.Samples;

namespace GreenLedger.SeedDemo.Cupping;

/// <summary>
/// Cups the samples in the order of arrival, a table a week or two: with the cuppers who are there, sometimes with one,
/// sometimes with one who leaves early. The last table is still open.
/// </summary>
internal sealed class CuppingRoom(Cast cast, IReadOnlyList<CuppingForm> forms, DateTimeOffset now, Draw draw)
{
    private const int LargestTable = 9;

    /// <summary>What came in the last days waits for its table.</summary>
    private const int DaysOfWaiting = 13;

    /// <summary>Since then the house pours a hidden duplicate and its reference at every table.</summary>
    private const int DaysOfBlindTables = 60;

    /// <summary>Of these second cups alone, so that they leave the other draws as they were.</summary>
    private const int SeedOfBlindTables = 417;

    private readonly DateOnly _today = DateOnly.FromDateTime(now.Date);
    private readonly IReadOnlyList<Palate> _palates = Palate.Of(cast);
    private readonly Pen _pen = new(draw);
    private SecondCups? _second;

    private CuppingForm HundredPoint => forms.First(form => form.Id == CuppingForm.HundredPointId);

    private CuppingForm Affective => forms.First(form => form.Id == CuppingForm.AffectiveId);

    public IReadOnlyList<CuppingSession> Cup(IReadOnlyList<Bag> bags)
    {
        var sessions = new List<CuppingSession>();
        var waiting = new List<Bag>();
        var next = 0;
        _second = new SecondCups(bags[0], new Draw(SeedOfBlindTables));
        for (var day = bags[0].ReceivedOn; day < _today.AddDays(-DaysOfWaiting); day = day.AddDays(1))
        {
            for (; next < bags.Count && bags[next].ReceivedOn < day; next++)
            {
                waiting.Add(bags[next]);
            }

            if (IsCuppingDay(day) && waiting.Count >= (day.DayOfWeek == DayOfWeek.Tuesday ? 5 : LargestTable))
            {
                sessions.Add(CupOne(day, waiting, sessions.Count));
            }
        }

        sessions.Add(Open([.. waiting, .. bags.Skip(next)]));
        return sessions;
    }

    private CuppingSession CupOne(DateOnly day, List<Bag> waiting, int number)
    {
        var robusta = waiting.Where(bag => bag.Coffee.Coffee.Origin.IsRobusta).Take(LargestTable).ToList();
        var isAffective = robusta.Count >= 2 || number % 7 == 3;
        var table = isAffective
            ? [.. robusta, .. waiting.Except(robusta).Take(Math.Max(0, 7 - robusta.Count))]
            : waiting.Except(robusta).Take(LargestTable).ToList();
        waiting.RemoveAll(table.Contains);
        var cups = !isAffective && draw.Chance(0.08) ? 3 : FormRules.UsualCups;
        var session = LayOut(Title(day), day, isAffective ? Affective : HundredPoint, cups, table);
        var at = At(day, 10);
        if (draw.Chance(0.1))
        {
            session.OpenKey(cast.Lead.Id, at.AddMinutes(-40));
        }

        var present = Present(day);
        var isBlind = day > _today.AddDays(-DaysOfBlindTables) && present.Count > 1;
        if (isBlind)
        {
            _second!.LayOut(session, table, present);
        }

        Taste(session, table, present, at);
        if (isBlind)
        {
            _second!.Taste(session, table, present, at);
        }

        session.Close(cast.Lead.Id, at.AddHours(3), ExpectedErrors.Of(cast.House));
        return session;
    }

    /// <summary>Laid out this morning: two cuppers are through, one has begun.</summary>
    private CuppingSession Open(List<Bag> waiting)
    {
        var table = waiting.Where(bag => !bag.Coffee.Coffee.Origin.IsRobusta).Take(6).ToList();
        var session = LayOut(Title(_today), _today, HundredPoint, FormRules.UsualCups, table);
        var at = now.AddMinutes(-50);
        _second!.LayOut(session, table, [.. _palates.Skip(1)]);
        session.LetPour(cast.Lead.Person);
        session.PourFlight(1, at.AddMinutes(-5));
        Taste(session, table, [_palates[1], _palates[3]], at);
        Taste(session, [.. table.Take(2)], [_palates[4]], at.AddMinutes(20));
        return session;
    }

    private CuppingSession LayOut(string title, DateOnly day, CuppingForm form, int cups, List<Bag> table)
    {
        var session = new CuppingSession(title, day, form, cups, cast.Lead.Id);
        foreach (var bag in table)
        {
            session.Pour(bag.Sample, draw.Random);
        }

        return session;
    }

    private void Taste(CuppingSession session, List<Bag> table, List<Palate> present, DateTimeOffset at)
    {
        var roast = table.ToDictionary(bag => bag.Sample.Id, _ => draw.Normal(0, 0.2));
        var tainted = table.Where(bag => draw.Chance(bag.Coffee.Coffee.Quality < 83 ? 0.08 : 0.025)).Select(bag => bag.Sample.Id).ToHashSet();
        foreach (var palate in present)
        {
            var until = present.Count > 1 && table.Count > 4 && draw.Chance(0.09) ? table.Count * 2 / 3 : table.Count;
            for (var i = 0; i < until; i++)
            {
                var coffee = table[i].Coffee.Coffee;
                var isTainted = tainted.Contains(table[i].Sample.Id);
                var points = palate.Taste(coffee, roast[table[i].Sample.Id], draw);
                var rules = session.Form.Rules;
                var marks = session.FormId == CuppingForm.AffectiveId
                    ? _pen.Affective(rules, points, isTainted)
                    : _pen.HundredPoint(rules, points, session.CupsPerSample, isTainted);
                var code = session.Samples[i].Code;
                var sheet = session.Submit(code, palate.Member.Person, marks, at.AddMinutes((i * 6) + draw.Between(0, 4)));
                sheet.Remark(_pen.Words(coffee), _pen.Remark(isTainted), _pen.AddedByHand(sheet));
            }
        }
    }

    /// <summary>Who is there; the trainee came half a year ago, and now and then one cupper works alone.</summary>
    private List<Palate> Present(DateOnly day)
    {
        if (draw.Chance(0.07))
        {
            return [draw.Of(_palates.Take(4).ToList())];
        }

        var present = _palates
            .Where((palate, i) => (i < 4 || day > _today.AddDays(-180)) && draw.Chance(palate.Attends)).ToList();
        return present.Count > 1 ? present : [.. _palates.Take(3)];
    }

    private static bool IsCuppingDay(DateOnly day) =>
        day.DayOfWeek is DayOfWeek.Tuesday or DayOfWeek.Thursday && (day.Month, day.Day) is not ((12, > 23) or (1, < 3));

    /// <summary>Says nothing about what is on the table.</summary>
    private static string Title(DateOnly day)
    {
        var moment = day.ToDateTime(TimeOnly.MinValue);
        return $"Offer samples, week {ISOWeek.GetWeekOfYear(moment)} of {ISOWeek.GetYear(moment)}, {day.DayOfWeek}";
    }

    private DateTimeOffset At(DateOnly day, int hour) => new(day.ToDateTime(new TimeOnly(hour, 0)), now.Offset);
}
