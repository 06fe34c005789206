using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Samples;

/// <summary>A step of a sample that was taken back: what it said, and who took it back, when and why.</summary>
public sealed class SetBack
{
    private SetBack()
    {
        Said = "";
        Reason = "";
    }

    internal SetBack(int number, SampleStep step, DateOnly on, Id<Person>? stepBy, string said, string reason, Id<Person> by, DateTimeOffset at)
    {
        Number = number;
        Step = step;
        On = on;
        StepBy = stepBy;
        Said = said;
        Reason = Rule.Text(reason, "The reason", 500, nameof(Reason));
        By = by;
        At = at;
    }

    /// <summary>Counts from 1 within the sample.</summary>
    public int Number { get; private set; }

    /// <summary>The step that no longer holds.</summary>
    public SampleStep Step { get; private set; }

    /// <summary>The day that the step had.</summary>
    public DateOnly On { get; private set; }

    /// <summary>Who had entered the step.</summary>
    public Id<Person>? StepBy { get; private set; }

    /// <summary>What stood on the step, in words: <c>350 g, bag torn</c>.</summary>
    public string Said { get; private set; }

    public string Reason { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }
}
