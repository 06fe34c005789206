using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages;

/// <summary>What a page says instead of its content when it cannot be shown.</summary>
[AllowAnonymous]
[IgnoreAntiforgeryToken]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class ErrorModel : PageModel
{
    [BindProperty(SupportsGet = true)]
    public int? Code { get; set; }

    public string Heading => Code switch
    {
        400 => "This request cannot be read",
        403 => "This page is not for your role",
        404 => "There is no such page",
        413 => "This file is too large",
        429 => "Too many tries",
        _ => "Something went wrong here",
    };

    public string WhatToDo => Code switch
    {
        400 => "The form may be older than your sign-in: go back, load the page again, and send it once more.",
        403 => "Ask an administrator of your house for the role that opens it. Nothing was changed.",
        404 => "The address is wrong, or the record is no longer there.",
        413 => "Send a smaller file, or split the list. Nothing was stored.",
        429 => "Wait a minute, then try again.",
        _ => "Nothing was changed. Try again; if it happens again, tell the person who runs this server.",
    };

    public void OnGet()
    {
    }

    public void OnPost()
    {
    }
}
