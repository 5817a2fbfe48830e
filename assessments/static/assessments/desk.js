/* The desk of a rule: what the way of earning points doesn't need is hidden; what is typed is checked and tried at once. */

const desk = document.querySelector("[data-desk]");
const PAUSE = 400;
let waiting;

function showWay() {
  const way = desk.querySelector("input[name=way]:checked")?.value ?? "whole";
  for (const part of desk.querySelectorAll("[data-way]")) part.hidden = !!part.dataset.way && !part.dataset.way.split(" ").includes(way);
}

function check() {
  clearTimeout(waiting);
  waiting = setTimeout(() => window.htmx?.trigger(desk, "check"), PAUSE);
}

desk.addEventListener("input", (event) => {
  const name = event.target.name ?? "";
  if (name === "way") showWay();
  if (/^(test|when|share|step_|way|points|own-|severity)/.test(name)) check();
});
/* A test is one line: Enter keeps nothing and breaks nothing. */
desk.addEventListener("keydown", (event) => {
  if (event.key === "Enter" && event.target.matches(".rule-text, input:not([type=submit])")) event.preventDefault();
});
document.body.addEventListener("htmx:oobAfterSwap", showWay);
showWay();
