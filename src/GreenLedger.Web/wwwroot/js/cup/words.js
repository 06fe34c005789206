// Words for what is tasted: typed ahead from the house's list, new ones allowed; and the descriptive form beside the score.
import { element } from "./controls.js";

const split = text => (text ?? "").split(/[,;]/).map(word => word.trim()).filter(Boolean);

// Every word is a button that takes it off again; the field below adds one.
export function wordPicker(list, value, isOff, set) {
  const chosen = split(value);
  const input = element("input", { class: "form-control", id: "field-words", list: "house-words", autocomplete: "off", maxlength: 60, disabled: isOff });
  const add = () => {
    const words = split(input.value).filter(word => !chosen.some(one => one.toLowerCase() === word.toLowerCase()));
    if (words.length > 0) {
      set([...chosen, ...words].join(", "));
    }
  };
  input.addEventListener("change", add);
  input.addEventListener("keydown", event => { if (event.key === "Enter") { event.preventDefault(); add(); } });
  return element("div", { class: "field", "data-field": "words" },
    element("label", { class: "form-label", for: "field-words" }, "What you taste"),
    element("span", { class: "field-hint" }, "Begin to type for the house's words; your own are welcome."),
    element("div", { class: "word-row" }, ...chosen.map(word => element("button", {
      type: "button", class: "word-chip", disabled: isOff, "aria-label": `Take off ${word}`, onclick: () => set(chosen.filter(one => one !== word).join(", ")),
    }, word, element("span", { "aria-hidden": "true" }, " ×")))),
    input,
    element("datalist", { id: "house-words" }, ...list.map(({ word, family }) => element("option", { value: word, label: family }))));
}

const downwards = new Set(["Home", "PageDown", "ArrowLeft", "ArrowDown", "Enter", " "]);

function strength(line, value, isOff, set) {
  const id = `strength-${line.key}`;
  const shown = element("output", { class: "cup-value", for: id }, value ?? "–");
  const range = element("input", { type: "range", class: "strength", id, min: 0, max: line.highest, step: 1, disabled: isOff, "aria-valuetext": value === undefined ? "not said yet" : null });
  range.value = value ?? 0;
  range.addEventListener("input", () => { shown.textContent = range.value; });
  // A slider that stands at 0 already does not change when 0 is meant: a tap or a key on it says so.
  const record = () => { if (range.value !== value) { value = range.value; set(range.value); } };
  range.addEventListener("change", record);
  range.addEventListener("click", record);
  range.addEventListener("keyup", event => { if (downwards.has(event.key)) { record(); } });
  return element("div", { class: "cup-field", "data-field": `strength.${line.key}` },
    element("div", { class: "cup-strength" }, element("label", { for: id }, line.name), shown), range);
}

function checks(list, value, isOff, set) {
  const chosen = split(value);
  const full = chosen.length >= list.mostPicks;
  return element("fieldset", { class: "cup-field", "data-field": `checks.${list.key}` },
    element("legend", {}, element("span", {}, list.name), element("span", { class: "soft" }, `${chosen.length} of at most ${list.mostPicks}`)),
    element("div", { class: "word-row" }, ...list.words.map(({ key, word, parent }) => {
      const isIn = chosen.includes(key);
      return element("button", {
        type: "button", class: `word-chip ${parent ? "word-part" : ""}`, "aria-pressed": String(isIn), "aria-label": `${list.name}: ${word}`, disabled: isOff || (full && !isIn),
        onclick: () => set((isIn ? chosen.filter(one => one !== key) : [...chosen, key]).join(",")),
      }, word);
    })));
}

export function description(rules, values, isOff, set) {
  return rules === null ? [] : [element("section", { class: "tasting-step" }, element("h3", {}, "What it is like"),
    element("p", { class: "soft" }, "Strength from 0 to 15, and words that apply. No points. A dash is not said yet: tap the slider at 0 to say none."),
    ...rules.intensities.map(line => strength(line, values[`strength.${line.key}`], isOff, value => set(`strength.${line.key}`, value))),
    ...rules.lists.map(list => checks(list, values[`checks.${list.key}`], isOff, value => set(`checks.${list.key}`, value))))];
}
