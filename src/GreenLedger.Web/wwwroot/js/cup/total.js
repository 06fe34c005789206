// A sheet's total while it is written. The form's own numbers come with the page; what the server adds up when the sheet
// is handed in is the truth. Points are counted in ten-thousandths: sums of binary fractions would drift.
const exact = points => Math.round(points * 10000);
const ticked = word => [...word].filter(cup => cup === "1").length;
const usualCups = 5;
const pointsPerCups = 10;

export function missing(rules, values) {
  return rules.attributes.filter(line => line.markedBy === "scale" && values[`mark.${line.key}`] === undefined);
}

// What does not forbid the sheet but is probably a slip of the pen, as the server says it when the sheet is in.
export function doubts(rules, cups, values) {
  const has = key => rules.attributes.some(line => line.key === key) || rules.deductions.some(line => line.key === key);
  const bad = key => ticked(values[`bad.${key}`] ?? "");
  const said = [];
  if (has("fault") && has("clean-cup") && bad("fault") > cups - ticked(values["cups.clean-cup"] ?? "1".repeat(cups))) {
    said.push("A cup with a fault is still counted as clean: usually it is charged as unclean too.");
  }
  if (has("defective") && has("non-uniform") && bad("defective") > bad("non-uniform")) {
    said.push("A defective cup is usually ticked as non-uniform too.");
  }
  return said;
}

export function total(rules, cups, values) {
  if (missing(rules, values).length > 0) {
    return null;
  }
  let marks = 0;
  let counted = 0;
  for (const line of rules.attributes) {
    if (line.markedBy === "scale") {
      marks += exact(Number(values[`mark.${line.key}`]));
    } else {
      counted += exact(pointsPerCups * ticked(values[`cups.${line.key}`] ?? "1".repeat(cups)) / cups);
    }
  }
  const deducted = rules.deductions.reduce((sum, line) => sum + exact(line.pointsPerCup
    * ticked(values[`bad.${line.key}`] ?? "") * (rules.deductionsPerFiveCups ? usualCups / cups : 1)), 0);
  const raw = Math.round(marks * rules.slope) + counted + exact(rules.intercept) - deducted;
  const step = exact(rules.roundTo);
  return (step === 0 ? raw : Math.floor(raw / step + 0.5) * step) / 10000;
}
