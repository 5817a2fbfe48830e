/* Try a plan: says when what stands below belongs to the plan as it was. Without this file the page works the same. */

const stale = document.querySelector("[data-stale]");
const plan = (form) => JSON.stringify([...form.querySelectorAll("[name=value]")].map((one) => one.value));

for (const form of stale ? document.querySelectorAll("[data-plan]") : []) {
  const worked = plan(form);
  form.addEventListener("change", () => { stale.hidden = plan(form) === worked; });
}
