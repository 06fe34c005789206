// Sends what waits on this phone, one act after the other, and tells how it stands. Nothing is dropped because the
// network is gone: it is tried again, in order, under the same key, so that the server takes it once.
const patience = 8000;
const pause = 3000;

export class Sender extends EventTarget {
  constructor(store, address) {
    super();
    this.store = store;
    this.address = address;
    this.state = "saved";
    this.busy = false;
    window.addEventListener("online", () => this.send());
    setInterval(() => this.send(), pause);
  }

  async send() {
    if (this.busy) {
      this.again = true;
      return;
    }
    this.busy = true;
    try {
      do {
        this.again = false;
        // Two windows on one phone share what waits: only one sends.
        await (navigator.locks ? navigator.locks.request(`send ${this.address}`, () => this.sendAll()) : this.sendAll());
      } while (this.again);
    } finally {
      this.busy = false;
    }
  }

  async sendAll() {
    const held = new Set();
    for (const act of await this.store.acts()) {
      const sheet = await this.store.sheet(act.code);
      if (sheet.clash || sheet.refused) {
        held.add(act.code);
      }
      if (held.has(act.code)) {
        continue;
      }
      const outcome = await this.sendOne(act, sheet);
      if (outcome === "wait") {
        this.tell(await this.store.acts());
        return;
      }
      if (outcome === "held") {
        held.add(act.code);
      }
    }
    const waiting = await this.store.acts();
    this.state = held.size > 0 ? "held" : waiting.length > 0 ? "saving" : "saved";
    this.tell(waiting);
  }

  async sendOne(act, sheet) {
    let answer;
    try {
      answer = await this.ask(act, sheet);
    } catch {
      this.state = "offline";
      return "wait";
    }
    if (answer.ok) {
      const reply = await answer.json();
      await this.store.taken(act, { version: reply.version, ...(act.kind === "changes" ? {} : { isHandedIn: reply.isHandedIn, total: reply.total }) });
      this.say("taken", { code: act.code, act, reply });
      return "taken";
    }
    const reply = await answer.json().catch(() => ({}));
    if (answer.status === 409 && reply.stored) {
      await this.store.patch(act.code, { clash: reply.stored });
      this.say("clash", { code: act.code });
      return "held";
    }
    if (answer.status === 422 || answer.status === 404) {
      await this.store.patch(act.code, { refused: reply.detail ?? "The server does not take this sheet." });
      this.say("refused", { code: act.code });
      return "held";
    }
    this.state = answer.status === 401 || answer.status === 400 ? "signed-out" : "offline";
    return "wait";
  }

  ask(act, sheet) {
    const body = act.kind === "changes" ? { key: act.key, version: sheet.version, values: act.values }
      : act.kind === "reopen" ? { reason: act.reason } : {};
    return fetch(`${this.address}/sheets/${act.code}/${act.kind}`, {
      method: "POST",
      headers: { "Content-Type": "application/json", RequestVerificationToken: document.querySelector("meta[name='request-token']")?.content ?? "" },
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(patience),
    });
  }

  tell(waiting) {
    this.say("state", { state: this.state, waiting: waiting.length });
  }

  say(what, detail) {
    this.dispatchEvent(new CustomEvent(what, { detail }));
  }
}
