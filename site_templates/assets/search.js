// Search in the index that assets/index.js holds: rows of kind, words, detail, address. Words are a list of
// runs, every second one in italics.
// Nothing is fetched and nothing from the index is taken as HTML. Without this script the index stays as it is.
"use strict";
(function () {
  const box = document.getElementById("search-box");
  const form = document.getElementById("search-form");
  const told = document.getElementById("search-told");
  const list = document.getElementById("search-results");
  const index = document.getElementById("search-index");
  const rows = window.auctorumIndex || [];
  const MOST = 40;
  const before = told.textContent;

  // Spellings that copyists and sellers mix up become one: marks, case, ae/e, y/i, ph/f, k/c, double letters.
  function fold(text) {
    return text.toLowerCase().normalize("NFKD").replace(/[\u0300-\u036f]/g, "")
      .replace(/æ/g, "ae").replace(/œ/g, "oe").replace(/ß/g, "ss").replace(/×/g, "")
      .replace(/ae|oe/g, "e").replace(/ph/g, "f").replace(/th/g, "t").replace(/rh/g, "r")
      .replace(/y/g, "i").replace(/[kq]/g, "c").replace(/[^a-z0-9]+/g, " ").replace(/([a-z])\1+/g, "$1").trim();
  }

  // Letters to change, drop, add or swap to make b of a; gives up above `most`.
  function distance(a, b, most) {
    if (Math.abs(a.length - b.length) > most) return most + 1;
    let older = [], old = Array.from({ length: b.length + 1 }, (_, j) => j);
    for (let i = 1; i <= a.length; i++) {
      const now = [i];
      let best = i;
      for (let j = 1; j <= b.length; j++) {
        let cost = Math.min(old[j] + 1, now[j - 1] + 1, old[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
        if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, older[j - 2] + 1);
        now[j] = cost;
        if (cost < best) best = cost;
      }
      if (best > most) return most + 1;
      older = old;
      old = now;
    }
    return old[b.length];
  }

  const entries = rows.map(function (row) {
    return { row: row, main: fold(row[1].join("")).split(" "), more: fold(row[2]).split(" ") };
  });

  // How far one wanted word is from a word of the entry: 0 the same, below 1 a beginning, then letters amiss.
  function nearest(wanted, words, most) {
    let best = most + 1;
    for (const word of words) {
      if (word === wanted) return 0;
      if (word.startsWith(wanted)) best = Math.min(best, 0.3);
      else if (best > 1) {
        best = Math.min(best, distance(wanted, word, most));
        if (wanted.length > 4 && word.length > wanted.length) {
          const amiss = distance(wanted, word.slice(0, wanted.length), most - 1);
          if (amiss < most) best = Math.min(best, 0.5 + amiss);
        }
      }
    }
    return best;
  }

  function score(wanted, entry) {
    let sum = 0;
    for (const word of wanted) {
      const most = word.length < 4 ? 0 : word.length < 7 ? 1 : word.length < 11 ? 2 : 3;
      const near = nearest(word, entry.main, most);
      const aside = near === 0 ? 1 : nearest(word, entry.more, Math.min(most, 1)) + 0.6;
      const best = Math.min(near, aside <= most + 1 ? aside : Infinity);
      if (best > most + (most ? 0.5 : 0.95)) return Infinity;
      sum += best;
    }
    return sum + 0.01 * Math.max(entry.main.length - wanted.length, 0);
  }

  function search(text) {
    const wanted = fold(text).split(" ").filter(Boolean);
    if (!wanted.length) return [];
    return entries.map((entry) => [score(wanted, entry), entry.row]).filter((pair) => pair[0] < Infinity)
      .sort((a, b) => a[0] - b[0] || (a[1][1].join("") < b[1][1].join("") ? -1 : 1)).map((pair) => pair[1]);
  }

  function line(row) {
    const item = document.createElement("li"), link = document.createElement("a"), small = document.createElement("small");
    link.setAttribute("href", row[3]);
    row[1].forEach(function (run, at) {
      const part = at % 2 ? document.createElement("i") : document.createTextNode(run);
      if (at % 2) part.textContent = run;
      link.append(part);
    });
    link.append(small);
    small.textContent = row[0].replace(/s$/, "") + (row[2] ? ": " + row[2] : "");
    item.append(link);
    return item;
  }

  function show() {
    const text = box.value, found = search(text), asked = text.trim() !== "";
    list.replaceChildren(...found.slice(0, MOST).map(line));
    list.hidden = !asked;
    index.hidden = asked && found.length > 0;
    told.textContent = !asked ? before
      : !found.length ? "Nothing is spelt like that. The whole index is below."
      : found.length > MOST ? "The nearest " + MOST + " of " + found.length + "."
      : found.length === 1 ? "One entry." : found.length + " entries, the nearest first.";
  }

  function move(event) {
    const links = Array.from(list.querySelectorAll("a"));
    const at = links.indexOf(document.activeElement);
    if (event.key === "ArrowDown" && links.length) {
      event.preventDefault();
      links[Math.min(at + 1, links.length - 1)].focus();
    } else if (event.key === "ArrowUp" && at >= 0) {
      event.preventDefault();
      (at ? links[at - 1] : box).focus();
    } else if (event.key === "Escape" && at >= 0) {
      box.focus();
    }
  }

  form.hidden = false;
  form.addEventListener("submit", function (event) {
    event.preventDefault();
    const first = list.querySelector("a");
    if (first) first.click();
  });
  box.addEventListener("input", show);
  document.addEventListener("keydown", move);
  box.value = new URLSearchParams(window.location.search).get("q") || "";
  show();
  if (window.matchMedia("(hover: hover)").matches) box.focus(); // on a telephone it would call up the keyboard
})();
