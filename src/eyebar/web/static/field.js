// Keeps what is read in the field on the device until it could be sent: a lost signal loses nothing.

const form = document.getElementById("field");
const store = `eyebar field ${form.dataset.handle}`;
const KEYS = ["what", "value", "place", "plus_minus", "gauge", "piece", "note"];
const PATIENCE_MS = 4000;
let part = form.elements.part.value;

const kept = () => JSON.parse(localStorage.getItem(store) || "[]");
const keep = (entries) => localStorage.setItem(store, JSON.stringify(entries));

function typed() {
  const found = [];
  for (let row = 0; form.elements[`value ${row}`]; row += 1) {
    const entry = { part };
    for (const key of KEYS) entry[key] = form.elements[`${key} ${row}`].value.trim();
    if (entry.value) found.push(entry);
  }
  return found;
}

function emptied() {
  for (const key of KEYS) for (let row = 0; form.elements[`${key} ${row}`]; row += 1) if (key !== "what") form.elements[`${key} ${row}`].value = "";
}

// Without signal the next part is taken on this page itself; what was read of it before is not here.
function take(name) {
  part = name;
  form.elements.part.value = name;
  document.getElementById("part-name").textContent = name;
  document.getElementById("before")?.replaceChildren("No signal: what was read of it before is not shown.");
  form.elements["value 0"].focus();
}

async function goTo(link) {
  try {
    await fetch(form.dataset.probe, { method: "HEAD", cache: "no-store", signal: AbortSignal.timeout(PATIENCE_MS) });
    location.href = link.href;
  } catch {
    take(link.textContent);
  }
}

function show() {
  const entries = kept();
  document.getElementById("gathered").hidden = entries.length === 0;
  const count = document.getElementById("count");
  count.hidden = entries.length === 0;
  count.firstElementChild.textContent = `${entries.length} ${entries.length === 1 ? "reading is" : "readings are"} kept on this device`;
  const sent = JSON.parse(localStorage.getItem(`${store} sent`) || "null");
  document.getElementById("were-sent").textContent = sent && Number(form.dataset.onto) > sent.onto
    ? `The first ${sent.count} of these had been sent when revision ${form.dataset.onto} was saved: throw away what is in it, or it is written down twice.` : "";
  document.getElementById("entries").replaceChildren(...entries.map((entry, i) => {
    const line = document.createElement("li");
    const said = document.createElement("span");
    said.textContent = `${entry.part}: ${entry.what} ${entry.value}${entry.place ? " @ " + entry.place : ""}`;
    const button = document.createElement("button");
    button.type = "button";
    button.className = "quiet";
    button.textContent = "Take out";
    button.setAttribute("aria-label", `Take out ${said.textContent}`);
    button.addEventListener("click", () => { const all = kept(); all.splice(i, 1); keep(all); show(); });
    line.append(said, button);
    return line;
  }));
  for (const one of document.querySelectorAll(".parts a")) {
    const count = entries.filter((entry) => entry.part === one.textContent).length;
    one.dataset.kept = count ? `${count} kept` : "";
  }
}

document.getElementById("keep")?.addEventListener("click", () => {
  keep([...kept(), ...typed()]);
  const parts = [...document.querySelectorAll(".parts a[href]")];
  const next = parts[parts.findIndex((one) => one.textContent === part) + 1];
  emptied();
  show();
  if (next) goTo(next);
});
if (part) {
  for (const one of document.querySelectorAll(".parts a[href]")) {
    one.addEventListener("click", (event) => { event.preventDefault(); goTo(one); });
  }
}
document.getElementById("send").addEventListener("click", () => {
  const entries = [...kept(), ...typed()];
  keep(entries);
  emptied();
  show();
  if (!navigator.onLine) {
    document.getElementById("signal").textContent = "No signal: all is kept here, send it later.";
    return;
  }
  localStorage.setItem(`${store} sent`, JSON.stringify({ onto: Number(form.dataset.onto), count: entries.length }));
  form.elements.entries.value = JSON.stringify(entries);
  form.requestSubmit();
});
document.getElementById("drop").addEventListener("click", () => {
  if (confirm("Throw away what is kept on this device?")) { localStorage.removeItem(store); localStorage.removeItem(`${store} sent`); show(); }
});
for (const one of document.querySelectorAll("#keep, #gathered")) one.hidden = false;
show();
