/**
 * What the sheet can do beyond paper, in a browser that runs scripts: ticks and blanks that are kept there, and the slider. Plain text,
 * because the page's policy admits it by its hash; the page is whole without it. The response travels as its knots with their slopes, so
 * that the cubic between two of them is the compiled response itself.
 */
export const sheetScript = `"use strict";
(() => {
  const shelf = "hingeline " + document.documentElement.dataset.fingerprint;
  let kept = {};
  try { kept = JSON.parse(localStorage.getItem(shelf)) || {}; } catch {}
  for (const field of document.querySelectorAll("[data-keep]")) {
    const name = field.dataset.keep;
    const box = field.type === "checkbox";
    if (Object.hasOwn(kept, name)) { if (box) field.checked = kept[name] === true; else field.value = String(kept[name]); }
    field.addEventListener("input", () => {
      kept[name] = box ? field.checked : field.value;
      try { localStorage.setItem(shelf, JSON.stringify(kept)); } catch {}
    });
  }
  const clear = document.getElementById("clear");
  clear.hidden = false;
  clear.addEventListener("click", () => {
    if (!confirm("Clear every tick and every reading of this sheet?")) return;
    kept = {};
    try { localStorage.removeItem(shelf); } catch {}
    for (const field of document.querySelectorAll("[data-keep]"))
      if (field.type === "checkbox") field.checked = false; else field.value = "";
  });

  const at = ([p0, d0, s0], [p1, d1, s1], pulse) => {
    const width = p1 - p0, t = (pulse - p0) / width, u = 1 - t;
    return d0 * u * u * (1 + 2 * t) + d1 * t * t * (1 + 2 * u) + width * t * u * (s0 * u - s1 * t);
  };
  const pulseFor = (knots, deflection) => {
    for (let index = 1; index < knots.length; index++) {
      const from = knots[index - 1], to = knots[index];
      if (deflection < Math.min(from[1], to[1]) || deflection > Math.max(from[1], to[1])) continue;
      const rising = to[1] > from[1];
      let low = from[0], high = to[0];
      for (let step = 0; step < 60; step++) {
        const middle = (low + high) / 2;
        if (at(from, to, middle) < deflection === rising) low = middle; else high = middle;
      }
      return (low + high) / 2;
    }
  };
  const text = (value, decimals) => {
    const digits = Math.abs(value).toFixed(decimals);
    return (value < 0 && Number(digits) !== 0 ? "\\u2212" : value > 0 && Number(digits) !== 0 ? "+" : "") + digits;
  };
  const along = ([low, high, from, to], value) => from + ((value - low) / (high - low)) * (to - from);

  const moveMark = (page, servo, pulse, deflection) => {
    for (const plot of page.querySelectorAll('[data-plot="' + servo.key + '"]')) {
      const mark = plot.querySelector("[data-mark]");
      mark.setAttribute("visibility", pulse === undefined ? "hidden" : "visible");
      if (pulse === undefined) continue;
      mark.setAttribute("cx", along(JSON.parse(plot.dataset.x), pulse));
      mark.setAttribute("cy", along(JSON.parse(plot.dataset.y), deflection));
    }
  };
  const moveLinkage = (panel, servo, deflection) => {
    const drawing = panel.querySelector('[data-linkage="' + servo.key + '"]');
    if (!drawing) return;
    const { deg, at: frames } = JSON.parse(drawing.dataset.frames);
    let next = deg.findIndex((value) => value >= deflection);
    if (next < 0) next = deg.length - 1;
    const last = Math.max(0, next - 1);
    const share = next === last ? 0 : Math.min(1, Math.max(0, (deflection - deg[last]) / (deg[next] - deg[last])));
    const points = frames[last].map((value, index) => value * (1 - share) + frames[next][index] * share);
    for (const part of drawing.querySelectorAll("[data-ends]")) {
      const [from, to] = JSON.parse(part.dataset.ends);
      part.setAttribute("x1", points[2 * from]); part.setAttribute("y1", points[2 * from + 1]);
      part.setAttribute("x2", points[2 * to]); part.setAttribute("y2", points[2 * to + 1]);
    }
  };
  for (const panel of document.querySelectorAll("[data-slide]")) {
    const { centre, below, above, decimals, servos } = JSON.parse(panel.dataset.slide);
    const input = panel.querySelector("input");
    const page = panel.closest(".page");
    const typed = (pulse, limits) => {
      if (!limits) return text(((pulse - centre) / (pulse < centre ? below : above)) * 100, decimals) + " %";
      const share = ((pulse - limits[0]) / (limits[1] - limits[0])) * 200 - 100;
      return Math.abs(share) > 100 ? "outside the limits" : text(share, decimals) + " share";
    };
    const show = () => {
      const deflection = Number(input.value);
      input.setAttribute("aria-valuetext", text(deflection, 1) + " degrees");
      for (const servo of servos) {
        const pulse = pulseFor(servo.knots, deflection);
        const place = panel.querySelector('output[data-servo="' + servo.key + '"]');
        if (pulse === undefined) place.textContent = servo.name + ": not measured at " + text(deflection, 1) + "\\u00b0";
        else {
          place.textContent = servo.name + ": " + text(deflection, 1) + "\\u00b0  " + pulse.toFixed(1) + " \\u00b5s  " + typed(pulse, servo.limits) +
            (pulse < servo.safe[0] || pulse > servo.safe[1] ? "  NOT SAFE" : "");
        }
        moveMark(page, servo, pulse, deflection);
        moveLinkage(panel, servo, deflection);
      }
    };
    panel.hidden = false;
    input.addEventListener("input", show);
    show();
    for (const mark of page.querySelectorAll("[data-mark]")) mark.setAttribute("visibility", "hidden");
  }
})();
`;

/** Reloads the page when the sheet behind it is written anew; part of the page only while `sheet --watch` serves it. */
export const followScript = `"use strict";
new EventSource("changes").addEventListener("message", () => location.reload());
`;
