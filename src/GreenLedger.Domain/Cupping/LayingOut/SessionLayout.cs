namespace GreenLedger.Domain.Cupping.LayingOut;

/// <summary>How a session is laid out, as far as it decides what its sheets can show.</summary>
/// <param name="Samples">Different coffees, the house reference among them.</param>
/// <param name="Duplicates">Codes beyond one for each coffee.</param>
/// <param name="TiesFlights">Whether a coffee stands in more than one flight.</param>
public sealed record SessionLayout(int Samples, int Cuppers, int CupsPerSample, int Duplicates, bool HasReference, int Flights = 1, bool TiesFlights = false)
{
    /// <summary>Repeats over all cuppers: each of them scores each hidden duplicate once more.</summary>
    public int Repeats => Cuppers * Duplicates;

    /// <summary>Of the additive fit when everyone hands in every sheet; a repeat tells of repeating, not of disagreeing.</summary>
    public int DegreesOfFreedom => (Cuppers - 1) * (Samples - 1);
}
