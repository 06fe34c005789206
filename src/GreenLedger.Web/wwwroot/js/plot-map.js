// Draws a new plot on the map: a click sets a corner, a drag or the wheel moves the map, which the server then draws anew. What is drawn
// is nothing but the lines of the text field; the server judges them.
(() => {
  const form = document.querySelector("[data-plot-draw]");
  if (!form) {
    return;
  }

  const field = form.querySelector("[data-corners]");
  const near = 12; // Pixels within which a click means the first corner, or a drag is still a click.
  let pressed = null;
  let wasDragged = false;
  let wheel = 0;

  const map = () => form.querySelector("[data-map]");
  const lines = () => field.value.split("\n").map(line => line.trim()).filter(line => line !== "");
  const isClosed = all => all.length > 3 && all[0] === all[all.length - 1];

  function positions() {
    return lines().map(line => line.replace("\u2212", "-").split(/[,;\s]+/).map(Number)).filter(pair => pair.length === 2 && pair.every(Number.isFinite));
  }

  function edges(svg) {
    const { west, east, north, south } = svg.dataset;
    return { west: Number(west), east: Number(east), north: Number(north), south: Number(south) };
  }

  function placeOf(svg, [longitude, latitude]) {
    const { west, east, north, south } = edges(svg);
    const { width, height } = svg.viewBox.baseVal;
    return [(longitude - west) / (east - west) * width, (north - latitude) / (north - south) * height];
  }

  function positionAt(svg, event) {
    const { west, east, north, south } = edges(svg);
    const { width, height } = svg.viewBox.baseVal;
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    return [west + point.x / width * (east - west), north - point.y / height * (north - south)];
  }

  function made(name, attributes, text) {
    const element = document.createElementNS("http://www.w3.org/2000/svg", name);
    Object.entries(attributes).forEach(([key, value]) => element.setAttribute(key, value));
    element.textContent = text ?? "";
    return element;
  }

  function draw() {
    const svg = map();
    const all = positions();
    const closed = isClosed(lines());
    const places = all.map(one => placeOf(svg, one));
    const parts = [];
    if (places.length > 1) {
      parts.push(made("polyline", { class: "plot-drawn", points: places.map(place => place.join(",")).join(" ") }));
    }
    places.slice(0, closed ? -1 : undefined).forEach(([x, y], at) => {
      parts.push(made("circle", { class: "plot-corner", cx: x, cy: y, r: 5 }));
      parts.push(made("text", { class: "plot-corner-number", x: x + 9, y: y - 6 }, String(at + 1)));
    });
    svg.querySelector("[data-drawn]").replaceChildren(...parts);
  }

  function write(all) {
    field.value = all.join("\n");
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }

  function close() {
    const all = lines();
    if (all.length > 2 && !isClosed(all)) {
      write([...all, all[0]]);
    }
  }

  function isAtFirst(svg, event) {
    const all = positions();
    if (all.length < 3) {
      return false;
    }
    const [x, y] = placeOf(svg, all[0]);
    const first = new DOMPoint(x, y).matrixTransform(svg.getScreenCTM());
    return Math.hypot(first.x - event.clientX, first.y - event.clientY) < near;
  }

  function show([longitude, latitude], across) {
    form.querySelector("[name=At]").value = `${longitude.toFixed(6)},${latitude.toFixed(6)}`;
    form.querySelector("[name=Across]").value = String(Math.round(across * 1000) / 1000);
    form.querySelector("[data-look]").click();
  }

  form.addEventListener("click", event => {
    const tool = event.target.closest("[data-tool]")?.dataset.tool;
    const svg = event.target.closest("[data-map]");
    if (tool === "close") {
      close();
    } else if (tool === "undo") {
      write(lines().slice(0, -1));
    } else if (tool === "clear") {
      write([]);
    } else if (svg && !wasDragged) {
      if (isAtFirst(svg, event)) {
        close();
      } else if (!isClosed(lines())) {
        write([...lines(), positionAt(svg, event).map(degrees => degrees.toFixed(6)).join(", ")]);
      }
    }
  });

  form.addEventListener("pointerdown", event => {
    wasDragged = false;
    pressed = event.pointerType === "mouse" && event.target.closest("[data-map]") ? event : null;
  });

  form.addEventListener("pointerup", event => {
    if (pressed && Math.hypot(event.clientX - pressed.clientX, event.clientY - pressed.clientY) > near) {
      wasDragged = true;
      const svg = map();
      const { west, east, north, south } = edges(svg);
      const [from, to] = [positionAt(svg, pressed), positionAt(svg, event)];
      show([(west + east) / 2 + from[0] - to[0], (north + south) / 2 + from[1] - to[1]], Number(svg.dataset.across));
    }
    pressed = null;
  });

  form.addEventListener("wheel", event => {
    const svg = event.target.closest("[data-map]");
    if (!svg || event.deltaY === 0) {
      return;
    }
    event.preventDefault();
    clearTimeout(wheel);
    wheel = setTimeout(() => {
      // The position under the pointer stays where it is.
      const factor = event.deltaY < 0 ? 0.5 : 2;
      const { west, east, north, south } = edges(svg);
      const [longitude, latitude] = positionAt(svg, event);
      show([longitude + ((west + east) / 2 - longitude) * factor, latitude + ((north + south) / 2 - latitude) * factor], Number(svg.dataset.across) * factor);
    }, 120);
  }, { passive: false });

  field.addEventListener("input", draw);
  document.addEventListener("htmx:afterSettle", draw);
  form.querySelector("[data-tools]").hidden = false;
  draw();
})();
