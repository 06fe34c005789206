// Adds up a cupping sheet while it is typed, and steps marks by button, wheel and keyboard. The form's own numbers
// come with the page; what the server adds up when the sheet is handed in is the truth.
(() => {
  const sheet = document.querySelector("[data-cup-sheet]");
  if (!sheet) {
    return;
  }

  const rules = JSON.parse(sheet.dataset.rules);
  const cups = Number(sheet.dataset.cups);
  const total = sheet.querySelector("[data-total]");
  const arithmetic = sheet.querySelector("[data-arithmetic]");
  const usualCups = 5;
  const pointsPerCups = 10;

  // Marks are counted in ten-thousandths of a point: sums of binary fractions would drift.
  const exact = points => Math.round(points * 10000);
  const field = (kind, key) => sheet.querySelector(`[data-${kind}="${key}"]`);
  const read = input => (input && input.value.trim() !== "" ? Number(input.value) : null);
  const shown = tenThousandths => (tenThousandths / 10000).toFixed(2);

  function isMark(line, value) {
    return value !== null && value >= line.lowest && value <= line.highest
      && (exact(value) - exact(line.lowest)) % exact(line.step) === 0;
  }

  function addUp() {
    let marks = 0;
    let counted = 0;
    let missing = 0;
    for (const line of rules.attributes) {
      const onScale = line.markedBy === 0;
      const value = read(field(onScale ? "mark" : "good-cups", line.key));
      const fits = onScale ? isMark(line, value) : Number.isInteger(value) && value >= 0 && value <= cups;
      if (!fits) {
        missing += 1;
      } else if (onScale) {
        marks += exact(value);
      } else {
        counted += exact(pointsPerCups * value / cups);
      }
    }

    let deducted = 0;
    for (const line of rules.deductions) {
      const bad = read(field("deducted-cups", line.key)) ?? 0;
      deducted += exact(line.pointsPerCup * bad * (rules.deductionsPerFiveCups ? usualCups / cups : 1));
    }

    if (missing > 0) {
      total.value = "–";
      arithmetic.textContent = missing === 1 ? "one mark is missing or off its steps" : `${missing} marks are missing or off their steps`;
      return;
    }

    const before = Math.round(marks * rules.slope) + counted + exact(rules.intercept);
    const raw = before - deducted;
    const step = exact(rules.roundTo);
    const rounded = step === 0 ? raw : Math.floor(raw / step + 0.5) * step;
    total.value = shown(rounded);
    arithmetic.textContent = deducted === 0
      ? (rounded === raw ? "" : `${(raw / 10000).toFixed(4)} before rounding`)
      : `${shown(before)} less ${shown(deducted)}`;
  }

  function move(input, direction) {
    const step = Number(input.step);
    const low = Number(input.min);
    const high = Number(input.max);
    const now = read(input);
    // From an empty field the first step lands in the middle of the scale, on a step.
    const start = now ?? low + Math.round((high - low) / 2 / step) * step - direction * step;
    const next = Math.min(high, Math.max(low, start + direction * step));
    input.value = String(Math.round(next * 100) / 100);
    input.dispatchEvent(new Event("input", { bubbles: true }));
  }

  function addStepper(input) {
    const label = input.labels[0].firstChild.textContent.replace("\u200b", "").trim();
    const button = (sign, direction, word) => {
      const made = document.createElement("button");
      made.type = "button";
      made.tabIndex = -1; // With the keyboard the arrows step; the buttons are for fingers.
      made.className = "btn btn-plain cup-step";
      made.textContent = sign;
      made.setAttribute("aria-label", `${label} ${word}`);
      made.addEventListener("click", () => move(input, direction));
      return made;
    };
    input.before(button("−", -1, "down"));
    input.after(button("+", 1, "up"));
    input.addEventListener("wheel", event => {
      if (document.activeElement === input) {
        event.preventDefault();
        move(input, event.deltaY < 0 ? 1 : -1);
      }
    }, { passive: false });
  }

  sheet.querySelectorAll("[data-mark], [data-good-cups], [data-deducted-cups]").forEach(addStepper);
  sheet.addEventListener("input", addUp);
  addUp();
})();
