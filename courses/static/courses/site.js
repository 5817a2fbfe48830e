/* Small conveniences. Every page works without this file. */

const root = document.documentElement;

/* Display: the server keeps the choice; here it is shown at once and the page stays as it is, with all that was typed. */
for (const form of document.querySelectorAll("[data-display]")) {
  form.querySelector("button").hidden = true;
  form.addEventListener("change", async (event) => {
    const theme = event.target.value;
    const answer = await fetch(form.action, { method: "POST", body: new FormData(form) }).catch(() => null);
    if (!answer?.ok) return form.submit();
    if (theme === "auto") root.removeAttribute("data-theme");
    else root.setAttribute("data-theme", theme);
  });
}

/* The menu of the person closes on Escape, on a press elsewhere and when the keys go on past it. */
for (const menu of document.querySelectorAll(".who")) {
  document.addEventListener("click", (event) => {
    if (!menu.contains(event.target)) menu.open = false;
  });
  menu.addEventListener("focusout", (event) => {
    if (event.relatedTarget && !menu.contains(event.relatedTarget)) menu.open = false;
  });
  menu.addEventListener("keydown", (event) => {
    if (event.key !== "Escape") return;
    menu.open = false;
    menu.querySelector("summary").focus();
  });
}

/* Where a calculator answers as one types, its button only repeats the answer: it steps back. */
if (window.htmx) for (const button of document.querySelectorAll("[data-live] button[type=submit]")) button.hidden = true;
