// Remembers the section that is being read. The page works without it, and nothing waits for it.

const RESTS = 1500; // milliseconds a section must stay in view before it counts as read from

const form = document.querySelector("form[data-place]");
const headings = [...document.querySelectorAll(".lesson-text .prose > h2[id]")];
const above = new Set();
let told = form?.dataset.place ?? "";
let resting;

// The section being read is the last whose heading stands above the middle of the window.
function look(entries) {
  for (const { target, isIntersecting } of entries) {
    if (isIntersecting) above.add(target);
    else above.delete(target);
  }
  clearTimeout(resting);
  resting = setTimeout(tell, RESTS);
}

function tell() {
  const at = headings.filter((heading) => above.has(heading)).at(-1)?.id;
  if (!at || at === told || document.visibilityState === "hidden") return;
  told = at;
  const fields = new FormData(form);
  const body = new URLSearchParams({ csrfmiddlewaretoken: fields.get("csrfmiddlewaretoken"), section: at });
  // Lost on the way, it is told again with the next section.
  fetch(form.action, { method: "POST", body, keepalive: true }).catch(() => {
    told = "";
  });
}

if (form && headings.length) {
  // The upper half of the window, and all that was scrolled past.
  const observer = new IntersectionObserver(look, { rootMargin: "1000000px 0px -50% 0px" });
  for (const heading of headings) observer.observe(heading);
}
