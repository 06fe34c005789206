// The table's clock for the whole room.
import { Clock, minutes } from "./clock.js";

const wall = document.querySelector("[data-wall]");
const table = JSON.parse(wall.dataset.wall);
const clock = new Clock(`/api/cupping/sessions/${table.id}`, table.steps, table.clock);

function draw() {
  for (const part of wall.querySelectorAll("[data-flight]")) {
    const { seconds, step, next, until } = clock.now(Number(part.dataset.flight));
    part.querySelector("[data-time]").textContent = seconds === null ? "–:––" : minutes(seconds);
    part.querySelector("[data-now]").textContent = seconds === null ? "not poured" : step.name;
    part.querySelector("[data-next]").textContent = next ? `${next.name} in ${minutes(until)}` : "";
  }
}

clock.addEventListener("tick", draw);
draw();
