// The table's one clock: when each flight was poured comes from the server, and so does the time, so that every phone
// shows the same second whatever its own clock says.
const every = 4000;

// What the server last said, for a page that comes from the phone's own copy: the time written in that one is long past.
const name = "greenledger-table-clock";

export class Clock extends EventTarget {
  constructor(address, steps, clock) {
    super();
    this.address = address;
    this.steps = steps;
    this.place = `${name}${address}`;
    const known = JSON.parse(localStorage.getItem(this.place) ?? "null");
    if (known && Date.parse(known.saidAt) >= Date.parse(clock.now)) {
      Object.assign(this, known);
    } else {
      this.take(clock, Date.now());
    }
    this.ask();
    setInterval(() => this.ask(), every);
    setInterval(() => this.dispatchEvent(new Event("tick")), 250);
  }

  take(clock, at) {
    const known = { saidAt: clock.now, flights: clock.flights, isClosed: clock.isClosed, offset: Date.parse(clock.now) - at };
    Object.assign(this, known);
    localStorage.setItem(this.place, JSON.stringify(known));
  }

  async ask() {
    const sent = Date.now();
    try {
      const answer = await fetch(`${this.address}/clock`, { signal: AbortSignal.timeout(every) });
      if (answer.ok) {
        this.take(await answer.json(), (sent + Date.now()) / 2);
        this.dispatchEvent(new Event("asked"));
      }
    } catch {
      // Without the network the clock goes on from what it knows.
    }
  }

  // Water meets coffee now; only whoever leads or pours may say so.
  async pour(flight) {
    const sent = Date.now();
    const answer = await fetch(`${this.address}/flights/${flight}/pour`, {
      method: "POST",
      headers: { RequestVerificationToken: document.querySelector("meta[name='request-token']")?.content ?? "" },
    });
    if (answer.ok) {
      this.take(await answer.json(), (sent + Date.now()) / 2);
    }
  }

  // Seconds since the pour of a flight; null before it.
  seconds(flight) {
    const poured = this.flights.find(one => one.number === flight);
    return poured ? Math.max(0, Math.floor((Date.now() + this.offset - Date.parse(poured.pouredAt)) / 1000)) : null;
  }

  // The step that the table is at, the one that follows, and how long until then.
  now(flight) {
    const seconds = this.seconds(flight);
    if (seconds === null) {
      return { seconds, step: this.steps.find(step => step.afterSeconds === null) ?? this.steps[0], next: null, until: null };
    }
    const late = (this.flights.find(one => one.number === flight)?.extendedMinutes ?? 0) * 60;
    const last = this.steps.at(-1);
    const begins = step => step.afterSeconds + (step === last ? late : 0);
    const timed = this.steps.filter(step => step.afterSeconds !== null);
    const next = timed.find(step => begins(step) > seconds) ?? null;
    return { seconds, step: timed.filter(step => begins(step) <= seconds).at(-1), next, until: next ? begins(next) - seconds : null };
  }
}

export const minutes = seconds => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
