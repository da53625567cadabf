"use strict";
// Ticks stay in this browser, under the job and the piece, so that a new revision keeps them;
// nothing is sent anywhere.  A tick is [1 or 0, when, the line of the site log as it was then].
(function () {
  const key = "trim:" + document.body.dataset.job;
  const read = function () {
    try { return JSON.parse(localStorage.getItem(key)) || {}; } catch (error) { return {}; }
  };
  const boxes = [...document.querySelectorAll("[data-tick]")];
  const home = document.querySelector(".take-home");
  const show = function () {
    const ticks = read();
    for (const box of boxes) {
      const tick = ticks[box.dataset.tick];
      box.checked = tick === undefined ? box.defaultChecked : tick[0] === 1;
      const card = box.closest(".ticket");
      if (card) { card.classList.toggle("done", box.checked); }
      // a piece that was ticked before the job changed was cut as it was told then
      const then = box.checked && tick && tick[2] && tick[2] !== box.dataset.log ? tick[2] : "";
      let said = box.parentNode.querySelector(".before");
      if (!said && then) {
        said = box.parentNode.appendChild(document.createElement("span"));
        said.className = "before";
      }
      if (said) { said.textContent = then && home ? home.dataset.before.replace("{line}", then) : then; }
    }
  };
  for (const box of boxes) {
    box.addEventListener("change", function () {
      const ticks = read();
      if (box.checked === box.defaultChecked) { delete ticks[box.dataset.tick]; }
      else { ticks[box.dataset.tick] = [box.checked ? 1 : 0, Date.now(), box.dataset.log || ""]; }
      try { localStorage.setItem(key, JSON.stringify(ticks)); } catch (error) { /* private window */ }
      show();
    });
  }
  window.addEventListener("storage", show);
  show();

  // the lines in the order of the work; a piece that is fixed was cut before
  const lines = function () {
    const ticks = read();
    const here = new Map(boxes.map(function (box) { return [box.dataset.tick, box]; }));
    const ticked = Object.entries(ticks).filter(function (one) { return one[1][0] === 1 && one[1][2]; });
    ticked.sort(function (one, other) { return one[1][1] - other[1][1]; });
    const written = [];
    for (const [tick, value] of ticked) {
      const box = here.get(tick);
      if (box && box.defaultChecked) { continue; }
      if (!box) {
        if ("whole" in home.dataset) { written.push("# " + home.dataset.gone + ": " + value[2]); }
        continue;
      }
      const first = box.dataset.after && here.get(box.dataset.after);
      if (first && !first.defaultChecked) {
        const cut = ticks[box.dataset.after];
        const line = cut && cut[0] === 1 && cut[2] ? cut[2] : first.dataset.log;
        if (!written.includes(line)) { written.push(line); }
      }
      if (!written.includes(value[2])) { written.push(value[2]); }
    }
    return written.map(function (line) { return line + "\n"; }).join("");
  };
  if (home) {
    const part = function (name) { return home.querySelector(name); };
    const text = part("textarea");
    const told = part(".written [role=status]");
    home.hidden = !boxes.some(function (box) { return box.dataset.log; });
    part(".lines").addEventListener("click", function () {
      text.value = lines();
      told.textContent = "";
      part(".written").hidden = !text.value;
      part(".nothing").textContent = text.value ? "" : home.dataset.none;
      text.rows = Math.min(Math.max(text.value.split("\n").length, 3), 14);
    });
    part(".copy").addEventListener("click", function () {
      text.select();
      const done = function () { told.textContent = home.dataset.copied; };
      if (document.execCommand("copy")) { done(); }
      else if (navigator.clipboard) { navigator.clipboard.writeText(text.value).then(done, function () {}); }
    });
    part(".save").addEventListener("click", function () {
      const link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob([text.value], { type: "text/plain" }));
      link.download = home.dataset.file;
      link.click();
      setTimeout(function () { URL.revokeObjectURL(link.href); }, 10000);
    });
  }

  const find = document.getElementById("find");
  if (find) {
    const pieces = document.querySelectorAll("[data-piece]");
    const look = function () {
      const wanted = find.value.trim().toLowerCase();
      const hits = new Set();
      const all = new Set();
      for (const piece of pieces) {
        const hit = piece.dataset.piece.toLowerCase().includes(wanted);
        piece.hidden = !hit;
        all.add(piece.dataset.piece);
        if (hit) { hits.add(piece.dataset.piece); }
      }
      document.getElementById("found").textContent = wanted ? hits.size + " / " + all.size : "";
    };
    find.addEventListener("input", look);
    document.addEventListener("keydown", function (event) {
      const typing = /^(INPUT|TEXTAREA)$/.test(document.activeElement.tagName);
      if (event.key === "/" && !(typing && document.activeElement.type !== "checkbox")) {
        event.preventDefault();
        find.focus();
      }
      if (event.key === "Escape" && document.activeElement === find) { find.value = ""; look(); }
    });
  }

  // all sheets in one page: one of them is seen at a time
  const sheets = document.querySelectorAll("section.sheet");
  if (sheets.length) {
    const links = document.querySelectorAll(".turn a");
    const turn = function () {
      const asked = document.getElementById(decodeURIComponent(location.hash.slice(1)));
      const wanted = (asked && asked.closest("section.sheet")) || sheets[0];
      for (const sheet of sheets) { sheet.hidden = sheet !== wanted; }
      for (const link of links) {
        if (link.hash === "#" + wanted.id) { link.setAttribute("aria-current", "page"); }
        else { link.removeAttribute("aria-current"); }
      }
      if (asked && asked !== wanted) { asked.scrollIntoView(); } else { window.scrollTo(0, 0); }
    };
    window.addEventListener("hashchange", turn);
    turn();
  }
}());
