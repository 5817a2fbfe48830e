/* Try a plan: says when what stands below belongs to the plan as it was. Without this file the page works the same. */

const stale = document.querySelector("[data-stale]");

for (const form of document.querySelectorAll("[data-plan]")) {
  for (const kind of ["input", "change"]) form.addEventListener(kind, () => { if (stale) stale.hidden = false; });
}
