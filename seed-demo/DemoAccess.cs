namespace GreenLedger.SeedDemo;

/// <summary>How to get into the demo: who signs in with which password, and a token for scripts, where they still hold.</summary>
public sealed record DemoAccess(IReadOnlyList<DemoSignIn> SignIns, string? Token)
{
    /// <summary>One per line: <c>sign in: e-mail / password (name: roles)</c>, then <c>token: …</c>.</summary>
    public IEnumerable<string> Lines =>
    [
        .. SignIns.Select(person => $"sign in: {person.Email} / {person.Password}"),
        .. Token is null ? Array.Empty<string>() : [$"token: {Token}"],
    ];
}

/// <summary>A person of the demo; <paramref name="Roles"/> in words.</summary>
public sealed record DemoSignIn(string Email, string Password, string Name, string Roles);
