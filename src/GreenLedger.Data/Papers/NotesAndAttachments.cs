using GreenLedger.Domain.Papers;

namespace GreenLedger.Data.Papers;

/// <summary>Scopes of what is put on a record.</summary>
public static class NotesAndAttachments
{
    /// <summary>Newest first, those that were removed too.</summary>
    public static IQueryable<Note> On(this IQueryable<Note> notes, PapersOf about, Guid aboutId) =>
        notes.Where(note => note.About == about && note.AboutId == aboutId).OrderByDescending(note => note.At).ThenByDescending(note => note.Id);

    /// <summary>Newest first, those that were removed too.</summary>
    public static IQueryable<Attachment> On(this IQueryable<Attachment> attachments, PapersOf about, Guid aboutId) =>
        attachments.Where(one => one.About == about && one.AboutId == aboutId).OrderByDescending(one => one.At).ThenByDescending(one => one.Id);
}
