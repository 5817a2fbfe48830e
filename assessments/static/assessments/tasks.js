// Lists in a paper: cells of a picture, acts in order. Without this file every button sends the form, and the page comes back.

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

// Acts: added, moved and taken out in place; what is sent is the list of their hidden fields.
class Steps {
  constructor(form) {
    this.form = form;
    this.list = form.querySelector("[data-steps]");
    this.blank = form.querySelector("template").content.querySelector("li");
    this.said = form.querySelector("[data-moved]");
    this.add = form.querySelector("[value=add]");
    this.op = form.querySelector("[name=pick-op]");
    this.carries = [...form.querySelectorAll("[data-carry]")];
    form.addEventListener("click", (event) => this.pressed(event));
    form.addEventListener("restore", (event) => this.lay(event.detail));
    this.op.addEventListener("change", (event) => { event.stopPropagation(); this.offer(); });
    this.offer();
  }

  taken(op) {
    const act = [...this.op.options].find((one) => one.value === op);
    return act?.dataset.carries?.split(" ").filter(Boolean) ?? [];
  }

  offer() {
    for (const box of this.carries) box.hidden = !this.taken(this.op.value).includes(box.dataset.carry);
  }

  pressed(event) {
    const button = event.target.closest("[name=do]");
    if (!button) return;
    event.preventDefault();
    if (button === this.add) this.put();
    else this.move(button.closest("li"), button.dataset.do, button);
    this.number();
    this.form.dispatchEvent(new Event("change"));
  }

  put() {
    if (!this.op.value) return this.op.focus();
    const carried = this.carries.filter((box) => !box.hidden).map((box) => `${box.dataset.carry}=${box.querySelector("select").value}`);
    const step = this.step([this.op.value, ...carried].join(" "));
    this.list.append(step);
    for (const box of this.carries) box.querySelectorAll("option").forEach((one) => { one.selected = one.defaultSelected; });
    const none = this.form.querySelector("[data-none]");
    if (none) none.checked = false;
    this.tell(step);
  }

  move(step, how, button) {
    const other = how === "up" ? step.previousElementSibling : step.nextElementSibling;
    if (how === "out") {
      this.said.textContent = this.said.dataset.gone.replace("{step}", this.words(step));
      (other ?? step.previousElementSibling)?.querySelector("[data-do=out]").focus();
      step.remove();
      return;
    }
    if (!other) return;
    if (how === "up") other.before(step);
    else other.after(step);
    button.focus();
    this.tell(step);
  }

  step(token) {
    const step = this.blank.cloneNode(true);
    const [op, ...carried] = token.split(" ");
    const text = (select, value) => [...select.options].find((one) => one.value === value)?.textContent ?? value;
    const pairs = carried.map((one) => one.split("="));
    const words = [text(this.op, op), ...pairs.map(([name, value]) => text(this.form.querySelector(`[data-carry="${name}"] select`), value))];
    step.querySelector("[name=value]").value = token;
    step.querySelector("[data-words]").textContent = words.join(", ");
    step.querySelectorAll("[aria-label]").forEach((one) => one.setAttribute("aria-label", one.getAttribute("aria-label").trimEnd() + ` ${words.join(", ")}`));
    return step;
  }

  lay(tokens) {
    this.list.replaceChildren(...tokens.map((token) => this.step(token)));
    this.number();
  }

  number() {
    [...this.list.children].forEach((step, place) => step.querySelectorAll("[data-do]").forEach((one) => { one.value = `${one.dataset.do}:${place + 1}`; }));
    this.add.disabled = this.list.children.length >= Number(this.add.dataset.most);
  }

  words(step) {
    return step.querySelector("[data-words]").textContent;
  }

  tell(step) {
    const steps = [...this.list.children];
    this.said.textContent = this.said.dataset.moved.replace("{step}", this.words(step)).replace("{n}", steps.indexOf(step) + 1).replace("{all}", steps.length);
  }
}

for (const form of document.querySelectorAll("form[data-kind=order]")) new Steps(form);
