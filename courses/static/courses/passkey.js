// A form that carries a passkey: the browser is asked first, what it says is sent with the form.
for (const form of document.querySelectorAll("form[data-passkey]")) {
  const said = form.querySelector("[data-passkey-said]");
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    said.hidden = true;
    try {
      const answer = await window.webauthnJSON[form.dataset.passkey](JSON.parse(form.dataset.options));
      form.elements.credential.value = JSON.stringify(answer);
      form.submit();
    } catch {
      said.hidden = false;
    }
  });
}
