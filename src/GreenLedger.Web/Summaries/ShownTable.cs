using GreenLedger.Domain.Summaries;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Summaries;

/// <summary>A table of a summary as a page shows it, with where its figures open.</summary>
public sealed record ShownTable(SummaryTable Table, PurchaseSummary Summary)
{
    public string Text(int column, SummaryCell cell) => Table.Columns[column].Kind.Text(cell.Value, Summary.Currency);

    public bool IsNumber(int column) => Table.Columns[column].Kind.IsNumber();

    /// <summary>How a cell of the column is set: figures to the right, days on one line, text where it has room.</summary>
    public string ClassOf(int column) => IsNumber(column) ? "number" : Table.Columns[column].Kind == FigureKind.Day ? "nowrap" : "breaks";

    /// <summary>Few columns are not stretched over the whole page.</summary>
    public bool IsNarrow => Table.Columns.Count <= 4;

    /// <summary>Null for a figure that opens nowhere.</summary>
    public string? Address(SummaryCell cell, IUrlHelper url) => cell switch
    {
        { Value: null or 0m } => null,
        { Link: { Rows: { } rows, Group: var of } } => url.Page("/Summaries/Rows", SummaryAsk.RouteOf(Summary.Wish with { Group = of ?? Summary.Wish.Group }, rows)),
        { Link.Group: { } group } => url.Page("/Summaries/Index", SummaryAsk.RouteOf(Summary.Wish with { Group = group })),
        { Link.Contract: { } contract } => url.Page("/Contracts/Contract", new { Id = contract }),
        { Link.Arrival: { } arrival } => url.Page("/Arrivals/Arrival", new { Id = arrival }),
        { Link.Claim: { } claim } => url.Page("/Arrivals/Claim", new { Id = claim }),
        { Link.Stock: { } lot } => url.Page("/Stock/Lot", new { Id = lot }),
        { Link.Offer: { } offer } => url.Page("/Offers/Offer", new { Id = offer }),
        _ => null,
    };
}
