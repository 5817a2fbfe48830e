// Steps in order: added, changed, moved, doubled and taken out in place; what is sent is the list of their hidden fields.
// Without this file every button sends the form, and the page comes back.

// What was typed as a step takes it: numbers with points, a list of them with commas, no blank inside.
function taken(field) {
  const plain = field.value.trim();
  if (field.dataset.typed === "numbers") return plain.split(/[\s,;/]+/).filter(Boolean).join(",");
  return field.dataset.typed === "number" ? plain.replace(",", ".") : plain.replace(/\s+/g, "_");
}

class Steps {
  constructor(box) {
    this.box = box;
    this.form = box.closest("form");
    this.list = box.querySelector("[data-steps]");
    this.blank = box.querySelector("template").content.querySelector("li");
    this.said = box.querySelector("[data-moved]");
    this.picker = box.querySelector("[data-picker]");
    this.op = this.picker.querySelector("[name=pick-op]");
    this.add = this.picker.querySelector("[data-add]");
    this.shapes = [...this.picker.querySelectorAll("[data-ops]")];
    this.open = this.picker.closest("li");
    box.addEventListener("click", (event) => this.pressed(event));
    this.list.addEventListener("keydown", (event) => this.walked(event));
    this.picker.addEventListener("keydown", (event) => this.entered(event));
    this.form.addEventListener("restore", (event) => this.lay(event.detail));
    for (const kind of ["input", "change"]) this.picker.addEventListener(kind, (event) => this.picked(event));
    this.offer();
  }

  shape() {
    return this.shapes.find((one) => one.dataset.ops.split(" ").includes(this.op.value));
  }

  offer() {
    for (const one of this.shapes) one.hidden = one.disabled = one !== this.shape();
  }

  picked(event) {
    event.stopPropagation(); // nothing is answered before the step stands in the list
    if (event.target === this.op) this.offer();
  }

  entered(event) {
    if (event.key !== "Enter" || event.target.matches("button, summary")) return;
    event.preventDefault();
    if (event.target !== this.op || this.op.value) this.add.click();
  }

  walked(event) {
    const step = event.target.closest("li"), how = { ArrowUp: "up", ArrowDown: "down" }[event.key];
    if (!event.altKey || !how || !step || event.target.closest("[data-picker]")) return;
    event.preventDefault();
    this.move(step, how, document.activeElement);
    this.settle();
  }

  pressed(event) {
    const button = event.target.closest("[name=do]");
    if (!button) return;
    event.preventDefault();
    const how = button.dataset.do, step = button.closest("[data-steps] > li");
    if (button === this.add) this.put();
    else if (how === "leave") this.close();
    else if (how === "change") this.change(step);
    else this.move(step, how, button);
    this.settle();
  }

  settle() {
    [...this.list.children].forEach((step, place) => step.querySelectorAll(".moves [data-do]").forEach((one) => { one.value = `${one.dataset.do}:${place + 1}`; }));
    this.add.disabled = !this.open && this.list.children.length >= Number(this.add.dataset.most);
    this.form.dispatchEvent(new Event("change"));
  }

  fields() {
    return [...(this.shape()?.querySelectorAll("[name]") ?? [])];
  }

  put() {
    if (!this.op.value) return this.op.focus();
    const said = this.fields().map((one) => [one.name.slice(5), taken(one)]).filter(([, value]) => value);
    const step = this.step([this.op.value, ...said.map((pair) => pair.join("="))].join(" "));
    if (this.open) this.open.before(step);
    else this.list.append(step);
    const changed = this.open;
    this.close();
    changed?.remove();
    this.form.querySelectorAll("[data-none]").forEach((one) => { one.checked = false; });
    (changed ? step.querySelector("summary") : this.op).focus();
    this.tell(step);
  }

  change(step) {
    const [op, ...said] = step.querySelector("[name=value]").value.split(" ");
    const values = Object.fromEntries(said.map((one) => one.split("=")));
    this.open = step;
    const fold = step.querySelector("details");
    fold.open = true;
    fold.append(this.picker);
    this.op.value = op;
    this.offer();
    for (const one of this.fields()) one.value = values[one.name.slice(5)] ?? one.dataset.default ?? "";
    this.caption();
    (this.fields()[0] ?? this.op).focus();
  }

  close() {
    const left = this.open;
    this.open = null;
    this.list.after(this.picker);
    this.op.value = "";
    for (const one of this.picker.querySelectorAll("[data-default]")) one.value = one.dataset.default;
    this.offer();
    this.caption();
    left?.querySelector("summary").focus();
  }

  caption() {
    const label = this.picker.querySelector("label");
    this.add.lastElementChild.textContent = this.open ? this.add.dataset.puts : this.add.dataset.adds;
    label.textContent = this.open ? label.dataset.puts : label.dataset.adds;
    this.picker.querySelector("[data-do=leave]").hidden = !this.open;
  }

  move(step, how, button) {
    const other = how === "up" ? step.previousElementSibling : step.nextElementSibling;
    if (how === "out") {
      if (this.open === step) this.close();
      this.said.textContent = this.said.dataset.gone.replace("{step}", this.words(step));
      (other ?? step.previousElementSibling ?? this.box).querySelector("summary, [name=pick-op]").focus();
      step.remove();
      return;
    }
    if (how === "twice") {
      if (this.list.children.length >= Number(this.add.dataset.most)) return;
      const again = this.step(step.querySelector("[name=value]").value);
      step.after(again);
      again.querySelector("summary").focus();
      this.tell(again);
      return;
    }
    if (!other) return;
    if (how === "up") other.before(step);
    else other.after(step);
    button.focus();
    this.tell(step);
  }

  step(token) {
    const step = this.blank.cloneNode(true), words = this.worded(token);
    step.querySelector("[name=value]").value = token;
    step.querySelector("[data-words]").textContent = words;
    step.querySelectorAll("[aria-label]").forEach((one) => one.setAttribute("aria-label", `${one.getAttribute("aria-label").trimEnd()} ${words}`));
    return step;
  }

  worded(token) {
    const [op, ...said] = token.split(" ");
    const shape = this.shapes.find((one) => one.dataset.ops.split(" ").includes(op));
    const text = (select, value) => [...select.options].find((one) => one.value === value)?.textContent;
    const parts = said.map((one) => one.split("=")).map(([name, value]) => {
      const field = shape?.querySelector(`[name="pick-${name}"]`);
      return field?.options ? text(field, value) ?? value : (field?.dataset.says ?? "{}").replace("{}", value);
    });
    return [text(this.op, op) ?? op, ...parts].join(", ");
  }

  lay(tokens) {
    this.close();
    this.list.replaceChildren(...tokens.filter((one) => one !== "none_of_these").map((token) => this.step(token)));
    this.settle();
  }

  words(step) {
    return step.querySelector("[data-words]").textContent;
  }

  tell(step) {
    const steps = [...this.list.children];
    this.said.textContent = this.said.dataset.moved.replace("{step}", this.words(step)).replace("{n}", steps.indexOf(step) + 1).replace("{all}", steps.length);
  }
}

for (const box of document.querySelectorAll("[data-steps-list]")) new Steps(box);

for (const picker of document.querySelectorAll("[data-picker]")) {
  if (picker.closest("[data-steps-list]")) continue;
  const op = picker.querySelector("[name=pick-op]"), shapes = [...picker.querySelectorAll("[data-ops]")];
  const offer = () => shapes.forEach((one) => { one.hidden = one.disabled = !one.dataset.ops.split(" ").includes(op.value); });
  op.addEventListener("change", offer);
  offer();
}
