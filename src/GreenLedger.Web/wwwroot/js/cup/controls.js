// The fields of a sheet for fingers: marks by whole points and quarters, or one of nine; a button for every cup.
export function element(tag, attributes = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith("on")) {
      made.addEventListener(name.slice(2), value);
    } else if (value === true) {
      made.setAttribute(name, "");
    } else if (value !== false && value !== null && value !== undefined) {
      made.setAttribute(name, value);
    }
  }
  made.append(...children.filter(child => child !== null && child !== undefined));
  return made;
}

const text = number => String(Math.round(number * 100) / 100);

function choice(label, name, options, chosen, isOff, choose) {
  return element("div", { class: "cup-choice", role: "group", "aria-label": name }, ...options.map(([value, word]) =>
    element("button", {
      type: "button", class: "cup-button", "aria-pressed": String(value === chosen), "aria-label": `${label}: ${word}`, disabled: isOff,
      onclick: () => choose(value),
    }, word)));
}

// A mark. Up to twelve values stand in one row; finer scales have a row of whole points and one of the parts between.
export function mark(line, value, isOff, set) {
  const now = value === undefined ? null : Number(value);
  const count = Math.round((line.highest - line.lowest) / line.step) + 1;
  const shown = element("output", { class: "cup-value" }, now === null ? "–" : line.step < 1 ? now.toFixed(2) : text(now));
  const field = element("fieldset", { class: "cup-field", "data-field": `mark.${line.key}` }, element("legend", {}, element("span", {}, line.name), shown));
  if (count <= 12) {
    const all = Array.from({ length: count }, (_, i) => text(line.lowest + i * line.step));
    field.append(choice(line.name, line.name, all.map(one => [one, one]), now === null ? null : text(now), isOff, set));
    return field;
  }
  const wholes = Array.from({ length: Math.floor(line.highest) - Math.ceil(line.lowest) + 1 }, (_, i) => Math.ceil(line.lowest) + i);
  const parts = Array.from({ length: Math.round(1 / line.step) }, (_, i) => i * line.step);
  const whole = now === null ? null : Math.floor(now);
  field.append(
    choice(line.name, `${line.name}, whole points`, wholes.map(one => [one, text(one)]), whole, isOff,
      one => set(text(Math.min(line.highest, one + (now === null ? 0 : now - whole))))),
    choice(line.name, `${line.name}, parts of a point`, parts.map(one => [one, one.toFixed(2).slice(1)]), now === null ? null : now - whole, isOff,
      one => set(text(Math.min(line.highest, (whole ?? wholes[Math.floor(wholes.length / 2)]) + one)))));
  return field;
}

// A word of 0 and 1 with a button for every cup; on is what 1 means.
export function cupRow(field, name, words, cups, value, isOff, set) {
  const now = (value ?? words.usual.repeat(cups)).split("");
  return element("fieldset", { class: "cup-field", "data-field": field }, element("legend", {}, element("span", {}, name)),
    element("div", { class: "cup-choice", role: "group", "aria-label": name }, ...now.map((cup, i) => element("button", {
      type: "button", class: `cup-button ${cup === words.usual ? "" : "cup-marked"}`, "aria-pressed": String(cup !== words.usual), disabled: isOff,
      "aria-label": `${name}: cup ${i + 1} ${words.marked}`,
      onclick: () => set(now.map((other, at) => at === i ? (other === "1" ? "0" : "1") : other).join("")),
    }, cup === words.usual ? String(i + 1) : "✕"))));
}

export function textField(field, name, hint, value, isOff, set, rows = 1) {
  const id = `field-${field}`;
  const input = element(rows > 1 ? "textarea" : "input", { id, class: "form-control", disabled: isOff, rows: rows > 1 ? rows : null, maxlength: rows > 1 ? 2000 : 60, autocomplete: "off" });
  input.value = value ?? "";
  let waiting;
  const send = () => { clearTimeout(waiting); if (input.value !== (value ?? "")) { value = input.value; set(input.value); } };
  input.addEventListener("input", () => { clearTimeout(waiting); waiting = setTimeout(send, 700); });
  input.addEventListener("change", send);
  return element("div", { class: "field", "data-field": field }, element("label", { class: "form-label", for: id }, name), hint ? element("span", { class: "field-hint" }, hint) : null, input);
}
