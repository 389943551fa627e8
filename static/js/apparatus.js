// Moves the apparatus. Every number was computed on the server: this only looks rows up in its table.

const bench = document.querySelector("[data-table]");
if (bench) set(bench);

function set(bench) {
  const { columns, rows } = JSON.parse(document.getElementById(bench.dataset.table).textContent);
  const slider = bench.querySelector("input[type=range]");
  const words = bench.querySelector("[role=status]");
  const log = document.querySelector("[data-log]");
  const clear = document.querySelector("[data-clear]");
  const moving = [...document.querySelectorAll("[data-form]")].filter((element) => element !== words);
  const links = [...bench.querySelectorAll("[data-depth]")];
  let resting;

  const at = (depth) => Object.fromEntries(columns.map((name, n) => [name, rows[depth][n]]));

  function show() {
    const row = at(slider.value);
    for (const element of moving) fill(element, row);
    for (const link of links) {
      if (link.dataset.depth === slider.value) link.setAttribute("aria-current", "true");
      else link.removeAttribute("aria-current");
    }
    // Spoken and written down once the slider rests, not at every depth it passes.
    clearTimeout(resting);
    resting = setTimeout(rest, 400);
  }

  function rest() {
    fill(words, at(slider.value));
    enter(log, slider.value, at(slider.value));
    history.replaceState(history.state, "", `?depth=${slider.value}`);
  }

  function go(event) {
    event.preventDefault();
    slider.value = event.currentTarget.dataset.depth;
    show();
  }

  function restart() {
    log.replaceChildren();
    enter(log, slider.value, at(slider.value));
  }

  for (const part of bench.querySelectorAll("[data-plain]")) part.hidden = true;
  for (const link of links) link.addEventListener("click", go);
  bench.querySelector("form").addEventListener("submit", (event) => event.preventDefault());
  slider.addEventListener("input", show);
  clear.hidden = false;
  clear.addEventListener("click", restart);
}

// Puts the row's numbers where the form has {names}, as text or in the attribute named.
function fill(element, row) {
  const { form, attr } = element.dataset;
  const text = form.replace(/\{(\w+)\}/g, (_, name) => row[name]);
  if (attr) element.setAttribute(attr, text);
  else element.textContent = text;
}

// A line of the table for this depth, in its place; none where it has one already.
function enter(log, depth, row) {
  const lines = [...log.rows];
  if (lines.some((line) => line.dataset.at === depth)) return;
  const line = document.createElement("tr");
  line.dataset.at = depth;
  for (const name of ["depth", "gauge", "absolute", "ata", "volume", "part"]) {
    const cell = document.createElement(name === "depth" ? "th" : "td");
    if (name === "depth") cell.scope = "row";
    else if (name !== "part") cell.className = "num";
    cell.textContent = row[name];
    line.append(cell);
  }
  log.insertBefore(line, lines.find((next) => Number(next.dataset.at) > Number(depth)) ?? null);
}
