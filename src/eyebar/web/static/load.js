// Moves the vehicle along the ruler by the force table that the server made. Between two rows every
// force is a straight line, so what stands here is exact; nothing else is computed.

const place = document.getElementById("load");
const drawing = place.querySelector("svg");
const zero = Number(drawing.dataset.zero);
const perFoot = Number(drawing.dataset.perFoot);
const NOTHING = 0.05;

// While the table is still being made the server says so, and is asked again.
async function tableOf(address) {
  for (;;) {
    const answer = await fetch(address, { credentials: "same-origin" });
    if (answer.status !== 202) return answer.json();
    await new Promise((done) => { setTimeout(done, 500); });
  }
}

const table = await tableOf(place.dataset.table);
const fronts = table.rows.map((row) => row.front_axle_ft);
const first = fronts[0];
const last = fronts[fronts.length - 1];
const bars = new Map([...drawing.querySelectorAll(".bar")].map((one) => [one.dataset.part.split("/").pop(), one]));
const rows = new Map([...document.querySelectorAll("#figures tr[data-bar]")].map((one) => [one.dataset.bar, one]));
const train = drawing.querySelector(".train");
const ruler = document.getElementById("ruler");
const line = document.getElementById("line");
let at = Number(place.dataset.at);
let held = null;

function rowBefore(front) {
  let low = 0;
  let high = fronts.length - 2;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (fronts[middle] <= front) low = middle; else high = middle - 1;
  }
  return low;
}

export function forcesAt(front) {
  const row = rowBefore(front);
  const part = (front - fronts[row]) / (fronts[row + 1] - fronts[row]);
  const before = table.rows[row].forces_kip;
  const after = table.rows[row + 1].forces_kip;
  return before.map((force, i) => force + part * (after[i] - force));
}

function shown(force) {
  const size = Math.abs(force).toFixed(1);
  return size === "0.0" ? size : (force > 0 ? "+" : "\u2212") + size;
}

function slackWords(front) {
  const slack = table.slack_between[rowBefore(front)];
  const gone = slack.filter((bar) => !table.slack_empty.includes(bar));
  const come = table.slack_empty.filter((bar) => !slack.includes(bar));
  const said = [];
  if (gone.length) said.push(`Gone slack: ${gone.join(", ")}.`);
  if (come.length) said.push(`Come in, idle under dead load alone: ${come.join(", ")}.`);
  return said.join(" ") || "The same bars work as under dead load alone.";
}

function put(front) {
  at = Math.min(Math.max(front, first), last);
  const forces = forcesAt(at);
  table.bars.forEach((bar, i) => {
    const force = forces[i];
    const work = Math.abs(force) < NOTHING ? "slack" : force > 0 ? "pulled" : "pushed";
    const drawn = bars.get(bar);
    if (drawn) {
      drawn.dataset.work = work;
      const figure = drawn.querySelector(".changing");
      if (figure) figure.textContent = shown(force);
    }
    const row = rows.get(bar);
    if (row) {
      row.cells[2].textContent = shown(force);
      row.cells[3].textContent = work === "slack" ? "carries nothing" : `${work === "pulled" ? "pulled apart" : "pushed together"}, ${shown(force)} kip`;
    }
  });
  train.setAttribute("transform", `translate(${zero + at * perFoot} 0)`);
  const bound = table.stations_ft[table.direction === "up" ? table.stations_ft.length - 1 : 0][0];
  document.getElementById("place").textContent = `front axle at ${at.toFixed(1)} ft, bound for ${bound}`;
  document.getElementById("slack").textContent = slackWords(at);
  document.querySelector("input[name=at]").value = at.toFixed(2);
  ruler.value = at;
  const here = document.getElementById("here");
  if (here) {
    const x = 600 * (at - first) / (last - first);
    here.setAttribute("x1", x);
    here.setAttribute("x2", x);
  }
  drawing.dataset.front = at;
  seen();
}

// Where the drawing is wider than the screen, the vehicle stays in sight.
function seen() {
  const sheet = drawing.parentElement;
  if (held !== null || sheet.scrollWidth <= sheet.clientWidth) return;
  const [box, drawn, within] = [train, drawing, sheet].map((one) => one.getBoundingClientRect());
  const left = Math.max(box.left, drawn.left);
  const right = Math.min(box.right, drawn.right);
  if (left < within.left || right > within.right) {
    sheet.scrollLeft += (left + right - within.left - within.right) / 2;
  }
}

function footAt(event) {
  const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(drawing.getScreenCTM().inverse());
  return (point.x - zero) / perFoot;
}

drawing.addEventListener("pointerdown", (event) => {
  if (event.target.closest("a")) return;
  const foot = footAt(event);
  held = event.target.closest(".train") ? foot - at : 0;
  drawing.setPointerCapture(event.pointerId);
  put(foot - held);
});
drawing.addEventListener("pointermove", (event) => { if (held !== null) put(footAt(event) - held); });
drawing.addEventListener("pointerup", () => { held = null; seen(); });
drawing.addEventListener("pointercancel", () => { held = null; });

document.addEventListener("keydown", (event) => {
  if (event.target.closest("input, select, textarea") && event.target !== ruler) return;
  const step = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
  if (!step) return;
  event.preventDefault();
  if (event.shiftKey) {
    const next = step > 0 ? fronts.find((one) => one > at + 1e-6) : [...fronts].reverse().find((one) => one < at - 1e-6);
    if (next !== undefined) put(next);
  } else {
    put(at + 0.5 * step);
  }
});

ruler.addEventListener("input", () => put(Number(ruler.value)));
for (const one of document.querySelectorAll(".scripted")) one.hidden = false;
for (const one of document.querySelectorAll(".steps a[rel]")) {
  one.addEventListener("click", (event) => {
    event.preventDefault();
    const next = one.rel === "next" ? fronts.find((front) => front > at + 1e-6) : [...fronts].reverse().find((front) => front < at - 1e-6);
    if (next !== undefined) put(next);
  });
}
// A mark of a place that governs, on the ruler or in words: the load goes there without a new page.
for (const one of document.querySelectorAll("a.to-place, #standing a:has(.place)")) {
  one.addEventListener("click", (event) => {
    event.preventDefault();
    put(Number(new URL(one.getAttribute("href"), location.href).searchParams.get("at")));
  });
}
for (const one of drawing.querySelectorAll("a:has(.bar)")) {
  one.addEventListener("click", (event) => {
    event.preventDefault();
    const address = new URL(one.getAttribute("href"), location.href);
    address.searchParams.set("at", at);
    location.href = address;
  });
}
const large = document.getElementById("large");
large.addEventListener("click", () => {
  const on = document.body.classList.toggle("large");
  large.setAttribute("aria-pressed", String(on));
});
drawing.dataset.front = at;
seen();
place.dataset.ready = "yes";
