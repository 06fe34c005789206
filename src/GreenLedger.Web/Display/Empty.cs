namespace GreenLedger.Web.Display;

/// <summary>What an empty list says: what is missing, what to do first, and the button for it (none without the right).</summary>
public sealed record Empty(string Title, string WhatToDo, string? Button = null, string? Address = null);
