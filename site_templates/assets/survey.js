// Moves the threshold of a survey: counts the figures that the page carries, overall and at each site, as
// site/survey_moving.py does, and draws and tells what it finds. Without this script the page stays at the threshold
// of the criterion. Nothing is fetched and nothing from the page is taken as HTML.
"use strict";
(function () {
  const mover = document.getElementById("mover");
  if (!mover) return;
  const Z = 1.9599639845400536; // of 95 %
  const ROUNDING = 1e-9;
  const data = mover.dataset;
  const figures = JSON.parse(data.figures); // row of the site, figure, half-width of its error, plants
  const rows = Number(data.rows);
  const states = data.states ? JSON.parse(data.states) : null;
  const start = Number(data.value), drawn = Number(data.drawn), parted = Number(data.parted);
  const slide = document.getElementById("slide"), typed = document.getElementById("typed");
  const told = document.getElementById("told"), beside = document.getElementById("beside");
  const back = document.getElementById("back");

  // To the nearest whole number, halves to the even one.
  function whole(value) {
    const near = Math.round(value);
    return near - value === 0.5 && near % 2 ? near - 1 : near;
  }

  function wilson(k, n) {
    const share = k / n, weight = Z * Z / n;
    const middle = (share + weight / 2) / (1 + weight);
    const half = Math.sqrt(weight * share * (1 - share) + weight * weight / 4) / (1 + weight);
    return [k === 0 ? 0 : Math.max(0, middle - half), k === n ? 1 : Math.min(1, middle + half)];
  }

  // For each row, and last for all together: plants that count, plants measured, plants within the error.
  function tally(place) {
    const found = Array.from({ length: rows + 1 }, () => [0, 0, 0]);
    const line = place + parted;
    for (const [row, value, error, many] of figures) {
      const fits = data.atLeast ? value >= place : value <= place;
      const near = Math.abs(value - line) < error - ROUNDING * Math.max(Math.abs(value), Math.abs(line));
      for (const each of row < 0 ? [found[rows]] : [found[row], found[rows]]) {
        each[0] += fits === (data.fitting !== "") ? many : 0;
        each[1] += many;
        each[2] += near ? many : 0;
      }
    }
    return found;
  }

  function shareWords(k, n) {
    const share = k / n;
    return share > 0 && share < 0.005 ? "under 1 %" : whole(100 * share) + " %";
  }

  function intervalWords(ends) {
    const [low, high] = ends.map((end) => 100 * end);
    const told = high - low > 2 ? whole : (end) => end.toFixed(1);
    return told(low) + "–" + told(high) + " %";
  }

  function printed(place) {
    return states ? states[place] || String(place) : Number(place.toFixed(6)) + data.unit;
  }

  function sentence(place, count) {
    const [k, n, near] = count;
    return k + " of " + n + " plants " + data.side.split("{}").join(printed(place)) + " (" + shareWords(k, n) + ", " +
      intervalWords(wilson(k, n)) + "); " + near + (near === 1 ? " is" : " are") + " within the error of measuring.";
  }

  function drawBar(row, count) {
    const bar = row.querySelector(".small-bar");
    const [k, n, near] = count;
    if (!bar || !n) return;
    const wide = bar.viewBox.baseVal.width - 4, ends = wilson(k, n);
    const [low, high] = ends.map((end) => (2 + wide * end).toFixed(1));
    const path = "M" + low + " 4v8M" + low + " 8H" + high + "M" + high + " 4v8";
    bar.querySelector(".share").setAttribute("width", (wide * k / n).toFixed(1));
    for (const each of bar.querySelectorAll(".interval, .interval-halo")) each.setAttribute("d", path);
    row.querySelector(".now span").textContent = k + " of " + n;
    row.querySelector(".rate span").textContent = shareWords(k, n) + " (" + intervalWords(ends) + ")";
    row.querySelector(".near span").textContent = near || "";
    row.querySelector(".near").classList.toggle("empty", !near);
  }

  // A group that stands at its place on the axis; its words stay inside the picture.
  function drawLine(group, place) {
    const axis = group.dataset, low = Number(axis.low), high = Number(axis.high);
    const inside = Math.min(Math.max(place + drawn, low), high);
    const x = Number(axis.start) + (inside - low) / (high - low) * (axis.end - axis.start);
    const words = group.querySelector("text");
    const anchor = x < 46 ? "start" : x > axis.width - 46 ? "end" : "middle";
    group.setAttribute("transform", "translate(" + x.toFixed(1) + " 0)");
    words.setAttribute("text-anchor", anchor);
    words.setAttribute("x", { start: -6, end: 6, middle: 0 }[anchor]);
    words.textContent = printed(place);
  }

  function show(place) {
    const found = tally(place);
    told.textContent = sentence(place, found[rows]);
    slide.setAttribute("aria-valuetext", printed(place));
    if (beside) beside.textContent = data.beside ? "= " + (place / Number(data.factor)).toFixed(2) + " " + data.beside : "";
    if (states) typed.textContent = printed(place);
    back.disabled = place === start;
    for (const row of document.querySelectorAll("[data-row]")) {
      if (rows) drawBar(row, found[Number(row.dataset.row)]);
      else if (row.classList.contains("whole")) drawBar(row, found[0]); // too many figures to tell them by site
    }
    for (const group of document.querySelectorAll(".cut")) drawLine(group, place);
  }

  function to(place) {
    slide.value = String(place);
    if (!states) typed.value = String(place);
    show(place);
  }

  slide.addEventListener("input", function () {
    if (!states) typed.value = slide.value;
    show(Number(slide.value));
  });
  if (!states) {
    typed.addEventListener("input", function () {
      if (typed.value === "" || !Number.isFinite(typed.valueAsNumber)) return;
      slide.value = typed.value;
      show(typed.valueAsNumber);
    });
  }
  back.addEventListener("click", function () {
    to(start);
    slide.focus();
  });
  mover.querySelector(".controls").hidden = false;
  document.documentElement.classList.add("moving");
  to(start);
})();
