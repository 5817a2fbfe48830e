// Cells of a picture in a paper. Without this file a cell is a checkbox as any other.

// Cells: one tab stop a grid, arrows walk, Space marks as in any checkbox; a cell has one verdict.
const JUMPS = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -6, ArrowDown: 6 };

for (const grid of document.querySelectorAll(".zones")) {
  const cells = [...grid.querySelectorAll("input")];
  const stop = (cell) => cells.forEach((one) => { one.tabIndex = one === cell ? 0 : -1; });
  stop(cells.find((one) => one.checked) ?? cells[0]);
  grid.addEventListener("focusin", (event) => stop(event.target));
  grid.addEventListener("keydown", (event) => {
    const place = cells.indexOf(event.target), jump = JUMPS[event.key];
    if (!jump) return;
    event.preventDefault();
    if (Math.abs(jump) === 1 && Math.floor(place / 6) !== Math.floor((place + jump) / 6)) return;
    cells[place + jump]?.focus();
  });
  grid.addEventListener("change", (event) => {
    if (!event.target.checked) return;
    const cell = event.target.dataset.cell;
    event.target.form.querySelectorAll(`.zones [data-cell="${cell}"]:checked`).forEach((one) => { if (one !== event.target) one.checked = false; });
  });
}
