using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Papers;

/// <summary>A note or an attachment: it is on a record, and who removes it can put it back.</summary>
public interface IPaper
{
    PapersOf About { get; }

    Guid AboutId { get; }

    bool IsRemoved { get; }

    void Remove(Id<Person> by, DateTimeOffset at);

    void PutBack();
}
