// What plain pages get from htmx swaps: the reader is taken to what changed, and told when nothing did.

// Where a swap brought an error, a verdict or a new question, the focus moves there, so that keys and
// screen readers go on from it. The first that is found wins.
const PLACES = [
  "[aria-invalid='true']",
  ".error-summary",
  ".verdict",
  ".steps > li:last-child .board",
  "[data-focus]",
  "h2[tabindex]",
];

function settle(event) {
  const swapped = event.detail.elt;
  if (!swapped || swapped.contains(document.activeElement)) return;
  for (const place of PLACES) {
    const found = swapped.matches(place) ? swapped : swapped.querySelector(place);
    if (found) {
      found.focus();
      return;
    }
  }
}

function say(sentence) {
  const region = document.getElementById("page-status");
  if (!region) return;
  const note = document.createElement("p");
  note.className = "notice amber";
  note.textContent = sentence;
  region.replaceChildren(note);
  region.scrollIntoView({ block: "nearest" });
}

function hush() {
  document.getElementById("page-status")?.replaceChildren();
}

const status = document.getElementById("page-status");
document.addEventListener("htmx:afterSettle", settle);
document.addEventListener("htmx:beforeRequest", hush);
document.addEventListener("htmx:sendError", () => say(status.dataset.lost));
document.addEventListener("htmx:responseError", () => say(status.dataset.refused));

// A page that came back with errors opens at their summary.
document.querySelector(".error-summary")?.focus();
