// Makes a passkey on this device, or signs in with one. The server's form carries the answer back.
(() => {
  const able = window.isSecureContext && window.PublicKeyCredential?.parseCreationOptionsFromJSON;
  for (const form of document.querySelectorAll("form[data-passkey]")) {
    const button = form.querySelector("button");
    const said = form.querySelector("[data-passkey-said]");
    if (!able) {
      button.disabled = true;
      said.textContent = "This browser or this address cannot use passkeys: they need HTTPS and a current browser.";
      continue;
    }

    form.addEventListener("submit", async event => {
      event.preventDefault();
      said.textContent = "Follow your device…";
      try {
        const answer = await fetch(form.dataset.options, { method: "POST", body: new FormData(form) });
        if (!answer.ok) {
          throw new Error(answer.status === 429 ? "Too many tries: wait a minute." : "The server refused: load this page again.");
        }

        const options = await answer.json();
        const credential = form.dataset.passkey === "make"
          ? await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
          : await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) });
        form.querySelector("[name=Credential]").value = JSON.stringify(credential);
        form.submit();
      } catch (error) {
        said.textContent = error.name === "NotAllowedError"
          ? "Nothing happened: the device was not confirmed in time. Try again."
          : error.name === "InvalidStateError"
            ? "This device has a passkey for your account already."
            : error.message;
      }
    });
  }
})();
