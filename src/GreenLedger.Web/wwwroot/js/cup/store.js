// What a phone keeps of its table: each sheet as it stands here, and the acts that the server has not taken yet, in
// their order. An act and the sheet that it changes are written in one transaction, so that neither is without the other.
const name = "greenledger-table";

const opened = new Promise((resolve, reject) => {
  const request = indexedDB.open(name, 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore("sheets");
    request.result.createObjectStore("acts", { autoIncrement: true });
  };
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

const done = transaction => new Promise((resolve, reject) => {
  transaction.oncomplete = () => resolve();
  transaction.onerror = transaction.onabort = () => reject(transaction.error);
});

const answer = request => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

export class Store {
  // Sheets of one person at one table; another person on the same phone has others.
  constructor(person, session) {
    this.place = `${person}/${session}`;
  }

  keyOf(code) {
    return `${this.place}/${code}`;
  }

  async sheet(code) {
    const transaction = (await opened).transaction("sheets");
    return answer(transaction.objectStore("sheets").get(this.keyOf(code)));
  }

  async put(code, sheet) {
    const transaction = (await opened).transaction("sheets", "readwrite");
    transaction.objectStore("sheets").put(sheet, this.keyOf(code));
    return done(transaction);
  }

  // Changes some of what is kept of a sheet, and leaves alone what was written on it meanwhile.
  async patch(code, change) {
    const transaction = (await opened).transaction("sheets", "readwrite");
    const sheets = transaction.objectStore("sheets");
    sheets.put({ ...await answer(sheets.get(this.keyOf(code))), ...change }, this.keyOf(code));
    return done(transaction);
  }

  // Writes what changed on a sheet together with the act that changed it. The version stays: only the server counts it.
  async act(code, change, act) {
    const transaction = (await opened).transaction(["sheets", "acts"], "readwrite");
    const sheets = transaction.objectStore("sheets");
    sheets.put({ ...await answer(sheets.get(this.keyOf(code))), ...change }, this.keyOf(code));
    transaction.objectStore("acts").add({ ...act, code, place: this.place });
    return done(transaction);
  }

  // The acts not yet taken by the server, the oldest first.
  async acts() {
    const all = (await opened).transaction("acts").objectStore("acts");
    const [keys, values] = await Promise.all([answer(all.getAllKeys()), answer(all.getAll())]);
    return values.map((act, i) => ({ ...act, at: keys[i] })).filter(act => act.place === this.place);
  }

  // The server took an act: the sheet has the version that it led to.
  async taken(act, change) {
    const transaction = (await opened).transaction(["sheets", "acts"], "readwrite");
    transaction.objectStore("acts").delete(act.at);
    const sheets = transaction.objectStore("sheets");
    const sheet = await answer(sheets.get(this.keyOf(act.code)));
    sheets.put({ ...sheet, ...change }, this.keyOf(act.code));
    return done(transaction);
  }

  // Replaces what waits for a sheet by one act, or by none.
  async settle(code, sheet, act) {
    const waiting = await this.acts();
    const transaction = (await opened).transaction(["sheets", "acts"], "readwrite");
    const acts = transaction.objectStore("acts");
    waiting.filter(one => one.code === code).forEach(one => acts.delete(one.at));
    transaction.objectStore("sheets").put(sheet, this.keyOf(code));
    if (act) {
      acts.add({ ...act, code, place: this.place });
    }
    return done(transaction);
  }
}
