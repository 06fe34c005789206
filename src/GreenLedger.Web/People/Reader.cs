using GreenLedger.Data.Cupping;

namespace GreenLedger.Web.People;

/// <summary>What the person who asks may be told, for reads that go across rooms.</summary>
internal sealed class Reader(IHttpContextAccessor http, SealQuery seals)
{
    private Seal? _seal;

    private HttpContext Http => http.HttpContext ?? throw new InvalidOperationException("There is no request.");

    public bool MayRead(string room) => Http.User.MayRead(room);

    public bool MayWrite(string room) => Http.User.MayWrite(room);

    /// <summary>What an open cupping session keeps from the person.</summary>
    public async Task<Seal> SealAsync() =>
        _seal ??= await seals.ForAsync(Http.User.Person(), Http.User.Roles(), Http.RequestAborted);
}
