// Marks the faults of a record while it is typed; the server finds them.

const area = document.getElementById("text");
const list = document.getElementById("typing");
const own = (word) => document.createElement(word);
let timer = 0;
let asked = 0;

function toLine(line) {
  const lines = area.value.split("\n");
  const start = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0);
  area.focus();
  area.setSelectionRange(start, start + (lines[line - 1] || "").length);
  area.scrollTop = (line - 6) * area.scrollHeight / lines.length;
}

async function look() {
  const mine = ++asked;
  const sent = new URLSearchParams({ text: area.value });
  let found;
  try {
    const answer = await fetch(area.dataset.faults, { method: "POST", body: sent, credentials: "same-origin" });
    if (!answer.ok) return;
    found = (await answer.json()).faults;
  } catch {
    return;
  }
  if (mine !== asked) return;
  list.replaceChildren(...found.map((fault) => {
    const entry = own("li");
    if (fault.line) {
      const button = own("button");
      button.type = "button";
      button.className = "quiet";
      button.textContent = `line ${fault.line}`;
      button.addEventListener("click", () => toLine(fault.line));
      entry.append(button, " ");
    }
    entry.append(fault.said);
    return entry;
  }));
  area.setAttribute("aria-invalid", String(found.length > 0));
  marks(found.map((fault) => fault.line).filter(Boolean));
}

// A gutter beside the text: numbers of the lines, those with a fault marked.
const gutter = own("div");
gutter.className = "gutter";
gutter.setAttribute("aria-hidden", "true");
area.parentElement.prepend(gutter);

function marks(lines) {
  const count = area.value.split("\n").length;
  gutter.replaceChildren(...Array.from({ length: count }, (_, i) => {
    const one = own("span");
    one.textContent = i + 1;
    if (lines.includes(i + 1)) one.className = "fault";
    return one;
  }));
  gutter.scrollTop = area.scrollTop;
}

area.addEventListener("scroll", () => { gutter.scrollTop = area.scrollTop; });
area.addEventListener("input", () => { clearTimeout(timer); timer = setTimeout(look, 400); });
for (const one of document.querySelectorAll("a[data-line]")) {
  one.addEventListener("click", (event) => { event.preventDefault(); toLine(Number(one.dataset.line)); });
}
marks([...document.querySelectorAll("a[data-line]")].map((one) => Number(one.dataset.line)));
