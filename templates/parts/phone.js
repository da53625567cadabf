"use strict";
// Ticks stay in this browser, under the job's revision; nothing is sent anywhere.
(function () {
  const key = "trim:" + document.body.dataset.revision;
  const read = function () {
    try { return JSON.parse(localStorage.getItem(key)) || {}; } catch (error) { return {}; }
  };
  const boxes = document.querySelectorAll("[data-tick]");
  const show = function () {
    const ticks = read();
    for (const box of boxes) {
      const tick = ticks[box.dataset.tick];
      box.checked = tick === undefined ? box.defaultChecked : tick === 1;
      const card = box.closest(".ticket");
      if (card) { card.classList.toggle("done", box.checked); }
    }
  };
  for (const box of boxes) {
    box.addEventListener("change", function () {
      const ticks = read();
      if (box.checked === box.defaultChecked) { delete ticks[box.dataset.tick]; }
      else { ticks[box.dataset.tick] = box.checked ? 1 : 0; }
      try { localStorage.setItem(key, JSON.stringify(ticks)); } catch (error) { /* private window */ }
      show();
    });
  }
  window.addEventListener("storage", show);
  show();
  const find = document.getElementById("find");
  if (!find) { return; }
  const pieces = document.querySelectorAll("[data-piece]");
  const look = function () {
    const wanted = find.value.trim().toLowerCase();
    let count = 0;
    for (const piece of pieces) {
      const hit = piece.dataset.piece.toLowerCase().includes(wanted);
      piece.hidden = !hit;
      if (hit) { count += 1; }
    }
    document.getElementById("found").textContent = wanted ? count + " / " + pieces.length : "";
  };
  find.addEventListener("input", look);
  document.addEventListener("keydown", function (event) {
    if (event.key === "/" && document.activeElement !== find) { event.preventDefault(); find.focus(); }
    if (event.key === "Escape" && document.activeElement === find) { find.value = ""; look(); }
  });
}());
