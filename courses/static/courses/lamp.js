/* The lamp of a panel: buttons and a slider beside its cells, and pictures that are asked for again while they are made.
   Without this file the cells alone move the lamp. Nothing here moves by itself. */

const PAUSE = 150; // ms that the lamp stands still before a picture is fetched that isn't here yet
const TRIES = 40;

const sleep = (seconds) => new Promise((done) => setTimeout(done, seconds * 1000));
const here = (image) => image.complete && image.naturalWidth > 0;

/* Asks until the picture is there. The browser keeps it, so that showing it then fetches nothing. */
async function made(address) {
  for (let tries = 0; tries < TRIES; tries += 1) {
    const answer = await fetch(address).catch(() => null);
    const whole = await answer?.blob().catch(() => null); // only what is read to its end is kept
    if (answer?.ok && whole) return true;
    if (answer && ![200, 503].includes(answer.status)) return false;
    await sleep((Number(answer?.headers.get("Retry-After")) || 3) * (0.7 + 0.6 * Math.random()));
  }
  return false;
}

class Lamp {
  constructor(box) {
    this.box = box;
    this.cells = [...box.querySelectorAll(".lamp-track input")];
    this.steps = box.querySelector(".lamp-steps");
    this.slider = box.querySelector("[type=range]");
    this.wanted = Number(this.cells.find((cell) => cell.checked)?.value ?? 1);
    box.addEventListener("load", (event) => this.arrived(event.target), true);
    box.addEventListener("error", (event) => this.missing(event.target), true);
    for (const image of box.querySelectorAll("[data-at]")) {
      if (here(image)) this.arrived(image);
      else if (image.complete && image.currentSrc) this.missing(image);
    }
    if (this.steps) this.listen();
  }

  listen() {
    this.steps.hidden = false;
    this.tell();
    this.steps.addEventListener("click", (event) => {
      const step = Number(event.target.closest("[data-step]")?.dataset.step ?? 0);
      if (step && this.cells[this.wanted + step - 1]) this.move(this.wanted + step);
    });
    this.slider?.addEventListener("input", () => this.move(Number(this.slider.value)));
    for (const cell of this.cells) {
      cell.addEventListener("input", (event) => event.stopPropagation()); // the lamp is no answer of a form round it
      cell.addEventListener("change", (event) => {
        event.stopPropagation();
        this.move(Number(cell.value));
      });
    }
  }

  images(n) {
    return [...this.box.querySelectorAll(`[data-at="${n}"]`)];
  }

  move(n) {
    this.wanted = n;
    this.tell();
    this.say(this.where());
    clearTimeout(this.timer);
    if (this.images(n).every(here)) this.turn();
    else this.timer = setTimeout(() => this.turn(), PAUSE);
  }

  turn() {
    this.cells[this.wanted - 1].checked = true;
    for (const image of this.images(this.wanted)) {
      image.loading = "eager";
      if (here(image)) this.arrived(image);
    }
  }

  /* The picture that was seen last stays until the one that is wanted is there. */
  arrived(image) {
    if (Number(image.dataset.at) !== this.wanted) return;
    for (const other of image.parentElement.querySelectorAll("[data-lit]")) delete other.dataset.lit;
    image.dataset.lit = "";
    if (this.waiting) this.say(this.where());
    this.waiting = false;
  }

  async missing(image) {
    if (image.dataset.asked) return;
    image.dataset.asked = "";
    this.waiting = true;
    this.say(this.box.dataset.wait);
    if (await made(image.src)) image.src = image.src;
    delete image.dataset.asked;
  }

  tell() {
    if (this.slider) {
      this.slider.value = this.wanted;
      this.slider.setAttribute("aria-valuetext", this.where());
    }
    for (const button of this.steps.querySelectorAll("[data-step]")) {
      button.setAttribute("aria-disabled", String(!this.cells[this.wanted + Number(button.dataset.step) - 1]));
    }
  }

  where() {
    return this.cells.length ? this.box.dataset.lamp.replace("{n}", this.wanted).replace("{count}", this.cells.length) : "";
  }

  say(words) {
    this.box.querySelector("[data-said]").textContent = words;
  }
}

for (const box of document.querySelectorAll("[data-lamp]")) new Lamp(box);
