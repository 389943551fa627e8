// Moves the apparatus. Every number was computed on the server: this only looks rows up in its table.

const PREFIX = "data-form-";

function setAll() {
  for (const bench of document.querySelectorAll("[data-apparatus]")) set(bench);
}

setAll();
// An answered guess brings the apparatus anew, this time with its controls.
document.addEventListener("htmx:afterSettle", setAll);

function set(bench) {
  const name = bench.dataset.apparatus;
  const table = document.getElementById(`${name}-table`);
  if (!table || bench.dataset.set) return;
  bench.dataset.set = "yes";
  const { top, switches, stops, columns, rows } = JSON.parse(table.textContent);
  const controls = bench.querySelector(".apparatus-controls");
  const slider = controls.querySelector("input[type=range]");
  const words = bench.querySelector(".bench-words");
  const links = [...controls.querySelectorAll("[data-at]")];
  const lines = [...bench.querySelectorAll(".bench-table tbody tr")];
  const moving = found(bench);
  let resting;

  // Which row belongs to a position under the switches as they are set: the slider turns fastest.
  function row(position) {
    let setting = 0;
    for (const [each, options] of switches) {
      setting = setting * options.length + options.indexOf(controls.elements[`${name}-${each}`].value);
    }
    const cells = rows[setting * (top + 1) + Number(position)];
    return Object.fromEntries(columns.map((column, n) => [column, cells[n]]));
  }

  function show() {
    const now = row(slider.value);
    for (const part of moving) if (part.element !== words) fill(part, now);
    for (const link of links) {
      if (link.dataset.at === slider.value) link.setAttribute("aria-current", "true");
      else link.removeAttribute("aria-current");
    }
    // Spoken once the slider rests, not at every position it passes.
    clearTimeout(resting);
    resting = setTimeout(rest, 400);
  }

  function rest() {
    for (const part of moving) if (part.element === words) fill(part, row(slider.value));
    const address = new URLSearchParams(location.search);
    for (const [key, value] of new FormData(controls)) address.set(key, value);
    history.replaceState(history.state, "", `?${address}${location.hash}`);
  }

  function turn() {
    lines.forEach((line, n) => {
      const now = row(stops[n]);
      for (const cell of line.querySelectorAll("[data-cell]")) cell.textContent = said(cell.dataset.cell, now);
    });
    show();
  }

  function go(event) {
    event.preventDefault();
    slider.value = event.currentTarget.dataset.at;
    show();
  }

  for (const part of bench.querySelectorAll("[data-plain]")) part.hidden = true;
  for (const link of links) link.addEventListener("click", go);
  controls.addEventListener("submit", (event) => event.preventDefault());
  controls.addEventListener("change", (event) => event.target !== slider && turn());
  slider.addEventListener("input", show);
}

// Everything that moves: the element, the attribute ("text" for its text) and the form it is filled with.
function found(bench) {
  const moving = [];
  for (const element of bench.querySelectorAll("*")) {
    for (const { name, value } of element.attributes) {
      if (name.startsWith(PREFIX)) moving.push({ element, attribute: name.slice(PREFIX.length), form: value });
    }
  }
  return moving;
}

function fill({ element, attribute, form }, row) {
  if (attribute === "text") element.textContent = said(form, row);
  else element.setAttribute(attribute, said(form, row));
}

function said(form, row) {
  return form.replace(/\{(\w+)\}/g, (_, name) => row[name]);
}
