// Counts on from the time that was left when the page was loaded, and says so at five minutes and at one.
// It sends nothing: when time is over the site decides, and the page offers the way to end the check.

const box = document.querySelector(".check-time");
const MINUTE = 60;
const SAID_AT = [5 * MINUTE, MINUTE];

function inWords(seconds) {
  if (seconds < MINUTE) return `${seconds} seconds`;
  const minutes = Math.floor(seconds / MINUTE);
  return minutes === 1 ? "1 minute" : `${minutes} minutes`;
}

function startClock(words, status, over, left) {
  const ends = Date.now() + left * 1000;
  const ahead = SAID_AT.filter((mark) => mark < left);
  let shown = "";

  function show() {
    const seconds = Math.max(0, Math.ceil((ends - Date.now()) / 1000));
    // Under a minute the words change every ten seconds: nobody is served by a flicker.
    const said = inWords(seconds < MINUTE ? Math.ceil(seconds / 10) * 10 : seconds);
    if (seconds > 0 && said !== shown) words.textContent = `${said} left.`;
    shown = said;
    if (ahead.length && seconds <= ahead[0]) {
      status.textContent = ahead.shift() === MINUTE ? "One minute is left." : "Five minutes are left.";
    }
    if (seconds > 0) return;
    clearInterval(ticking);
    words.textContent = "";
    status.textContent = "Time is over. What is sent now does not count.";
    over.hidden = false;
  }

  const ticking = setInterval(show, 1000);
  show();
}

if (box) {
  const part = (name) => box.querySelector(`[data-${name}]`);
  startClock(part("words"), part("said"), part("over"), Number(box.dataset.left));
}
