// A cupper's phone at the table: one sample at a time in the cupper's own order, every change kept at once on the phone
// and sent when it can be.
import { Clock, minutes } from "./clock.js";
import { cupRow, element, mark, textField } from "./controls.js";
import { Sender } from "./sender.js";
import { Store } from "./store.js";
import { doubts, missing, total } from "./total.js";
import { description, wordPicker } from "./words.js";

const place = document.querySelector("[data-cup-table]");
const table = JSON.parse(place.dataset.cupTable);
const address = `/api/cupping/sessions/${table.id}`;
const store = new Store(place.dataset.person, table.id);
const sender = new Sender(store, address);
const clock = new Clock(address, table.steps, table.clock);
const sheets = new Map();
let keeping = 0;
const find = name => place.querySelector(`[data-${name}]`);
const unsent = (code, field) => `${store.place}/${code}/${field}`;
let at = Math.max(0, table.codes.findIndex(one => one.code === decodeURIComponent(location.hash.slice(1))));

const here = () => table.codes[at];
const sheetOf = code => sheets.get(code);

// What the server said when the page was made, unless this phone holds something newer or not yet sent.
async function gather() {
  const waiting = new Set((await store.acts()).map(act => act.code));
  for (const { code, version, values, isHandedIn, total: points } of table.codes) {
    const kept = await store.sheet(code);
    const sheet = kept && (waiting.has(code) || kept.version >= version) ? kept : { version, values, isHandedIn, total: points };
    sheets.set(code, sheet);
    if (sheet !== kept) {
      await store.put(code, sheet);
    }
  }
  await pickUpUnsent();
}

// Text that was being typed when the page went away.
async function pickUpUnsent() {
  for (const { code } of table.codes) {
    for (const field of ["defect", "note"]) {
      const typed = localStorage.getItem(unsent(code, field));
      if (typed !== null) {
        await change(code, { [field]: typed });
      }
    }
  }
}

async function change(code, values) {
  const sheet = sheetOf(code);
  if (!sheet || sheet.isHandedIn) {
    return;
  }
  const kept = { ...sheet.values, ...values };
  for (const [field, value] of Object.entries(values)) {
    if (value === "") {
      delete kept[field];
    }
  }
  sheet.values = kept;
  await keep(code, { values: kept }, { kind: "changes", key: crypto.randomUUID(), values });
  Object.keys(values).forEach(field => localStorage.removeItem(unsent(code, field)));
  count();
  sender.send();
}

async function handIn(code) {
  const sheet = sheetOf(code);
  const left = missing(table.rules, sheet.values);
  if (left.length > 0) {
    say(`Still without a mark: ${left.map(line => line.name).join(", ")}.`);
    find("sheet").querySelector(`[data-field="mark.${left[0].key}"] button`)?.focus();
    return;
  }
  sheet.isHandedIn = true;
  sheet.total = total(table.rules, table.cups, sheet.values);
  await keep(code, { isHandedIn: true, total: sheet.total }, { kind: "hand-in" });
  say(`The sheet for ${code} is handed in.`);
  // Whoever went on to another sample meanwhile stays there.
  if (here().code === code) {
    const next = table.codes.findIndex((one, i) => i > at && !sheetOf(one.code).isHandedIn);
    show(next < 0 ? table.codes.findIndex(one => !sheetOf(one.code).isHandedIn) : next);
  } else {
    drawCodes();
  }
  sender.send();
}

async function reopen(code, reason) {
  const sheet = sheetOf(code);
  sheet.isHandedIn = false;
  await keep(code, { isHandedIn: false }, { kind: "reopen", reason });
  show(at);
  sender.send();
}

// Writes an act down on the phone; until it stands there, nothing is said to be saved.
async function keep(code, change, act) {
  keeping += 1;
  if (sender.state === "saved") {
    find("line").textContent = "Saving…";
  }
  try {
    await store.act(code, change, act);
  } finally {
    keeping -= 1;
  }
}

function say(sentence) {
  find("said").textContent = sentence;
}

function count() {
  const { values, isHandedIn } = sheetOf(here().code);
  const points = total(table.rules, table.cups, values);
  const left = missing(table.rules, values).length;
  find("total").textContent = points === null ? "–" : points.toFixed(2);
  find("left").textContent = isHandedIn ? "handed in" : left === 0 ? "all marked" : left === 1 ? "one mark to go" : `${left} marks to go`;
  const doubted = isHandedIn ? "" : doubts(table.rules, table.cups, values).join(" ");
  if (find("doubts").textContent !== doubted) {
    find("doubts").textContent = doubted;
  }
  find("doubts").hidden = doubted === "";
  find("hand-in").hidden = isHandedIn || !table.mayCup;
  find("ready").hidden = !table.codes.every(one => sheetOf(one.code).isHandedIn);
  drawCodes();
}

function drawCodes() {
  find("codes").replaceChildren(...table.codes.map(({ code, flight }, i) => {
    const sheet = sheetOf(code);
    const state = sheet.clash ? "two versions" : sheet.isHandedIn ? "in" : Object.keys(sheet.values).length > 0 ? "begun" : "";
    const starts = i > 0 && table.codes[i - 1].flight !== flight;
    return element("li", { class: starts ? "cup-flight" : null },
      element("button", { type: "button", class: "cup-code", "aria-current": i === at ? "true" : null, onclick: () => show(i) }, code, state ? element("span", {}, state) : null));
  }));
}

function fieldOf(line, sheet, isOff) {
  const set = field => async value => { await change(here().code, { [field]: value }); redraw(`[data-field="${field}"]`); };
  return line.markedBy === "scale"
    ? mark(line, sheet.values[`mark.${line.key}`], isOff, set(`mark.${line.key}`))
    : cupRow(`cups.${line.key}`, line.name, { usual: "1", marked: "is not good" }, table.cups, sheet.values[`cups.${line.key}`], isOff, set(`cups.${line.key}`));
}

// A cup is charged once: marked for one deduction of the older form, it is not marked for the other.
function badRow(line, sheet, isOff) {
  const field = `bad.${line.key}`;
  const others = table.rules.deductions.filter(other => other.key !== line.key && ["taint", "fault"].includes(line.key) && ["taint", "fault"].includes(other.key));
  return cupRow(field, `${line.name}, −${line.pointsPerCup} a cup`, { usual: "0", marked: `has it (${line.name})` }, table.cups, sheet.values[field], isOff, async word => {
    const values = { [field]: word };
    for (const other of others) {
      const marked = sheet.values[`bad.${other.key}`];
      if (marked && [...marked].some((cup, i) => cup === "1" && word[i] === "1")) {
        values[`bad.${other.key}`] = [...marked].map((cup, i) => (word[i] === "1" ? "0" : cup)).join("");
      }
    }
    await change(here().code, values);
    redraw(`[data-field="${field}"]`);
  });
}

function words(sheet, isOff) {
  const { code } = here();
  const text = (field, name, hint, rows) => {
    const made = textField(field, name, hint, sheet.values[field], isOff, value => change(code, { [field]: value }), rows);
    made.querySelector(".form-control").addEventListener("input", event => localStorage.setItem(unsent(code, field), event.target.value));
    return made;
  };
  return element("section", { class: "tasting-step" }, element("h3", {}, "Words"),
    wordPicker(table.words, sheet.values.words, isOff, async value => { await change(code, { words: value }); redraw("[data-field=words]"); find("sheet").querySelector("#field-words")?.focus(); }),
    text("defect", "Name of a taint or fault", "Phenolic, fermented, mouldy, potato."), text("note", "Note", null, 2));
}

function drawSheet() {
  const { code } = here();
  const sheet = sheetOf(code);
  const isOff = sheet.isHandedIn || !table.mayCup || Boolean(sheet.clash);
  // An attribute is marked at the last step that names it: the nose is not done before the crust is broken.
  const stepOf = line => table.steps.findLast(step => step.attributes.includes(line.key));
  const sections = table.steps.map(step => {
    const lines = table.rules.attributes.filter(line => stepOf(line) === step);
    return element("section", { class: "tasting-step", "data-at": step.key }, element("h3", {}, step.name),
      element("p", { class: "soft" }, step.does), step.caution ? element("p", { class: "note note-caution" }, step.caution) : null,
      ...lines.map(line => fieldOf(line, sheet, isOff)));
  });
  const rest = table.rules.attributes.filter(line => !stepOf(line));
  find("sheet").replaceChildren(...clashOf(code, sheet), ...refusedOf(code, sheet), ...sections,
    element("section", { class: "tasting-step" }, ...rest.map(line => fieldOf(line, sheet, isOff)), ...table.rules.deductions.map(line => badRow(line, sheet, isOff))),
    ...description(table.descriptive, sheet.values, isOff, async (field, value) => { await change(code, { [field]: value }); redraw(`[data-field="${field}"]`); }),
    words(sheet, isOff), ...closedOf(code, sheet));
}

function nameOf(field) {
  const [, key] = field.split(".");
  return [...table.rules.attributes, ...table.rules.deductions, ...table.descriptive?.intensities ?? [], ...table.descriptive?.lists ?? []].find(line => line.key === key)?.name ?? field;
}

// Two devices wrote on one sheet: both are shown, field by field, and the cupper says which stands.
function clashOf(code, sheet) {
  if (!sheet.clash) {
    return [];
  }
  const stored = sheet.clash;
  const differs = [...new Set([...Object.keys(sheet.values), ...Object.keys(stored.values)])].filter(field => sheet.values[field] !== stored.values[field]);
  const settle = async mine => {
    const values = mine ? sheet.values : stored.values;
    const settled = { version: stored.version, values, isHandedIn: false, total: null };
    sheets.set(code, settled);
    await store.settle(code, settled, mine && differs.length > 0
      ? { kind: "changes", key: crypto.randomUUID(), values: Object.fromEntries(differs.map(field => [field, sheet.values[field] ?? ""])) } : null);
    show(at);
    sender.send();
  };
  return [element("div", { class: "note note-caution cup-clash", role: "alert" },
    element("p", {}, "Another device changed this sheet. Nothing is lost: say which version stands."),
    element("table", { class: "table-ledger" },
      element("thead", {}, element("tr", {}, element("th", { scope: "col" }, "Field"), element("th", { scope: "col" }, "Here"), element("th", { scope: "col" }, "Other device"))),
      element("tbody", {}, ...differs.map(field => element("tr", {}, element("th", { scope: "row" }, nameOf(field)),
        element("td", {}, sheet.values[field] ?? "–"), element("td", {}, stored.values[field] ?? "–"))))),
    element("div", { class: "actions" },
      element("button", { type: "button", class: "btn btn-primary", "data-keep": "mine", onclick: () => settle(true) }, "Keep what is here"),
      element("button", { type: "button", class: "btn btn-plain", "data-keep": "theirs", onclick: () => settle(false) }, "Take the other")))];
}

// The server will not take what was written: it stays here until the cupper tries again or gives it up.
function refusedOf(code, sheet) {
  if (!sheet.refused) {
    return [];
  }
  const again = async () => {
    sheet.refused = null;
    await store.patch(code, { refused: null });
    show(at);
    sender.send();
  };
  const giveUp = async () => {
    const stored = (await (await fetch(`${address}/table`)).json()).codes.find(one => one.code === code);
    const settled = { version: stored.version, values: stored.values, isHandedIn: stored.isHandedIn, total: stored.total };
    sheets.set(code, settled);
    await store.settle(code, settled, null);
    show(at);
  };
  return [element("div", { class: "note note-caution", role: "alert" },
    element("p", {}, `${sheet.refused} What you wrote is still on this phone.`),
    element("div", { class: "actions" },
      element("button", { type: "button", class: "btn btn-plain", onclick: again }, "Try again"),
      element("button", { type: "button", class: "btn btn-plain", onclick: giveUp }, "Show what is stored")))];
}

function closedOf(code, sheet) {
  if (!sheet.isHandedIn || clock.isClosed || table.isByPlace) {
    return [];
  }
  const reason = element("input", { class: "form-control", id: "reopen-reason", maxlength: 500 });
  return [element("form", { class: "tasting-step", onsubmit: event => { event.preventDefault(); if (reason.value.trim()) { reopen(code, reason.value.trim()); } else { reason.focus(); } } },
    element("h3", {}, "This sheet is handed in and closed"),
    element("label", { class: "form-label", for: "reopen-reason" }, "Reason for opening it again"),
    element("span", { class: "field-hint" }, "What was handed in is kept."), reason,
    element("button", { class: "btn btn-plain" }, "Open it again"))];
}

function redraw(focus) {
  const held = document.activeElement?.getAttribute("aria-label");
  drawSheet();
  count();
  find("sheet").querySelectorAll(`${focus} button`).forEach(button => { if (button.getAttribute("aria-label") === held) { button.focus(); } });
}

function show(index) {
  at = index < 0 ? at : (index + table.codes.length) % table.codes.length;
  history.replaceState(null, "", `#${here().code}`);
  find("here").textContent = here().code;
  find("where").textContent = `${at + 1} of ${table.codes.length}${table.codes.at(-1).flight > 1 ? `, flight ${here().flight}` : ""}`;
  drawSheet();
  count();
  tick();
}

function tick() {
  const { seconds, step, next, until } = clock.now(here().flight);
  find("time").textContent = seconds === null ? "not poured" : minutes(seconds);
  find("step").textContent = next ? `${step.name} · ${next.name.toLowerCase()} in ${minutes(until)}` : step.name;
  place.querySelectorAll("[data-at]").forEach(section => section.classList.toggle("cup-now", section.dataset.at === step.key));
  find("over").hidden = !clock.isClosed;
  find("pour").hidden = !table.mayPour || seconds !== null;
}

const states = { saved: "Everything is saved.", saving: "Saving: ", held: "One sheet waits for you: ", offline: "No network: go on, ", "signed-out": "Sign in again in another window: " };
sender.addEventListener("state", ({ detail: { state, waiting } }) => {
  find("line").textContent = waiting === 0 && state === "saved" ? (keeping > 0 ? "Saving…" : states.saved)
    : `${states[state]}${waiting === 1 ? "one change is" : `${waiting} changes are`} kept on this phone.`;
  find("line").classList.toggle("cup-offline", state !== "saved");
});
sender.addEventListener("taken", async ({ detail: { code } }) => {
  const kept = await store.sheet(code);
  Object.assign(sheetOf(code), { version: kept.version, isHandedIn: kept.isHandedIn, total: kept.total });
  drawCodes();
});
for (const what of ["clash", "refused"]) {
  sender.addEventListener(what, async ({ detail: { code } }) => {
    sheets.set(code, await store.sheet(code));
    show(at);
  });
}
clock.addEventListener("tick", tick);
find("pour").addEventListener("click", async () => {
  await clock.pour(here().flight);
  tick();
});
find("before").addEventListener("click", () => show(at - 1));
find("after").addEventListener("click", () => show(at + 1));
find("hand-in").addEventListener("click", () => handIn(here().code));
await gather();
show(at);
place.hidden = false;
sender.send();

// The page itself is kept too, so that it opens again without the network.
if ("serviceWorker" in navigator && window.isSecureContext) {
  const registration = await navigator.serviceWorker.register("/table-worker.js", { scope: "/Cupping/Cup/" });
  const worker = registration.active ?? registration.waiting ?? registration.installing;
  const keep = () => worker.postMessage({ keep: [location.pathname, ...performance.getEntriesByType("resource").map(one => one.name)] });
  if (worker.state === "activated") {
    keep();
  } else {
    worker.addEventListener("statechange", () => { if (worker.state === "activated") { keep(); } });
  }
}
