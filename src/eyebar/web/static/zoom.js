// The drawing under a magnifying glass: wheel with Control, or + and - and arrow keys on the drawing.

for (const place of document.querySelectorAll("[data-zoom]")) {
  const drawing = place.querySelector("svg");
  if (!drawing) continue;
  const whole = drawing.viewBox.baseVal;
  const [width, height] = [whole.width, whole.height];
  let [x, y, scale] = [0, 0, 1];

  const show = () => {
    x = Math.min(Math.max(x, 0), width - width / scale);
    y = Math.min(Math.max(y, 0), height - height / scale);
    drawing.setAttribute("viewBox", `${x} ${y} ${width / scale} ${height / scale}`);
  };
  const closer = (factor, at) => {
    const next = Math.min(Math.max(scale * factor, 1), 12);
    const point = at || { x: x + width / scale / 2, y: y + height / scale / 2 };
    x = point.x - (point.x - x) * scale / next;
    y = point.y - (point.y - y) * scale / next;
    scale = next;
    show();
  };
  const buttons = document.createElement("span");
  buttons.className = "line zoom scripted";
  for (const [word, act] of [["Nearer", () => closer(1.5)], ["Farther", () => closer(1 / 1.5)], ["Whole", () => { scale = 1; show(); }]]) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "quiet";
    button.textContent = word;
    button.addEventListener("click", act);
    buttons.append(button);
  }
  place.querySelector(".line")?.append(buttons);
  drawing.addEventListener("wheel", (event) => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(drawing.getScreenCTM().inverse());
    closer(event.deltaY < 0 ? 1.2 : 1 / 1.2, at);
  }, { passive: false });
  let from = null;
  drawing.addEventListener("pointerdown", (event) => {
    if (scale > 1 && !event.target.closest("a")) from = { x: event.clientX, y: event.clientY };
  });
  drawing.addEventListener("pointermove", (event) => {
    if (!from) return;
    const ratio = width / scale / drawing.clientWidth;
    x -= (event.clientX - from.x) * ratio;
    y -= (event.clientY - from.y) * ratio;
    from = { x: event.clientX, y: event.clientY };
    show();
  });
  for (const end of ["pointerup", "pointerleave", "pointercancel"]) drawing.addEventListener(end, () => { from = null; });
}
