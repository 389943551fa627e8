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

const status = document.getElementById("page-status");

// What asks by itself, again and again, carries its own sentence in data-lost. It neither wipes away what
// another request has said nor leaves its own standing once it succeeds.
const own = (event) => event.detail.elt.dataset?.lost;

function say(event, sentence) {
  if (!status || (own(event) && status.firstChild)) return;
  const note = document.createElement("p");
  note.className = "notice amber";
  note.textContent = own(event) ?? sentence;
  note.toggleAttribute("data-own", Boolean(own(event)));
  status.replaceChildren(note);
  if (!own(event)) status.scrollIntoView({ block: "nearest" });
}

function hush(event) {
  if (!own(event)) status?.replaceChildren();
}

function heard(event) {
  if (event.detail.successful) status?.querySelector("[data-own]")?.remove();
}

document.addEventListener("htmx:afterSettle", settle);
document.addEventListener("htmx:beforeRequest", hush);
document.addEventListener("htmx:afterRequest", heard);
document.addEventListener("htmx:sendError", (event) => say(event, status?.dataset.lost));
document.addEventListener("htmx:responseError", (event) => say(event, status?.dataset.refused));

// A page that came back with errors opens at their summary.
document.querySelector(".error-summary")?.focus();
