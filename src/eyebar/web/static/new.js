// Draws the truss again whenever a size changes; the server draws it.

const form = document.getElementById("begin");
let timer = 0;

async function draw() {
  const asked = new URLSearchParams(new FormData(form));
  if (!asked.get("panels") || !asked.get("depth")) return;
  const answer = await fetch(`${form.action}?${asked}`, { credentials: "same-origin" });
  if (!answer.ok) return;
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  document.getElementById("growing").replaceChildren(...page.getElementById("growing").childNodes);
}

form?.addEventListener("input", () => { clearTimeout(timer); timer = setTimeout(draw, 350); });
