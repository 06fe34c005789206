// Moves the focus to the summary of errors after a refused form, keeps files that are too large from being sent, asks before acts that name a thing, and keeps
// the anti-forgery token on requests that htmx sends.
(() => {
  const summary = document.querySelector("[data-errors]");
  if (summary) {
    summary.focus();
  }

  // A request that is too large is refused whole, with all that was typed beside its files: that is said before it leaves.
  document.addEventListener("submit", event => {
    const form = event.target;
    const bytes = [...form.querySelectorAll("input[type=file]")].flatMap(input => [...input.files]).reduce((sum, file) => sum + file.size, 0);
    const most = Number(form.dataset.mostMegabytes ?? 60);
    if (bytes <= most * 1024 * 1024) {
      return;
    }
    event.preventDefault();
    event.stopImmediatePropagation();
    const note = form.querySelector("[data-too-large]") ?? document.createElement("p");
    Object.assign(note, { className: "note note-stop", tabIndex: -1, textContent: `What you chose has ${(bytes / 1024 / 1024).toFixed(0)} MB, more than the ${most} MB that can be sent at once: choose smaller files, or send them one after the other. Nothing that you typed is lost.` });
    note.dataset.tooLarge = "";
    note.setAttribute("role", "alert");
    form.prepend(note);
    note.focus();
  });

  document.addEventListener("submit", event => {
    const question = event.submitter?.dataset.ask ?? event.target.dataset.ask;
    if (question && !window.confirm(question)) {
      event.preventDefault();
    }
  });

  // Signing out does not lose what a phone could not send from its cupping table, but it then waits: that is said first.
  document.addEventListener("submit", async event => {
    const form = event.target;
    if (!form.matches("[data-sign-out]") || !window.indexedDB) {
      return;
    }
    event.preventDefault();
    const count = await import("/js/cup/kept.js").then(kept => kept.waiting()).catch(() => 0);
    const changes = count === 1 ? "One change of a cupping sheet is" : `${count} changes of cupping sheets are`;
    if (count === 0 || window.confirm(`${changes} not sent yet. Signed out, they wait on this phone until you open the table here again; if the table is closed before, they do not count. Sign out all the same?`)) {
      form.submit();
    }
  });

  document.addEventListener("change", event => {
    if (event.target.matches("[data-submit-on-change]")) {
      event.target.form.requestSubmit();
    }
  });

  document.addEventListener("htmx:configRequest", event => {
    const token = document.querySelector("meta[name='request-token']");
    if (token) {
      event.detail.headers.RequestVerificationToken = token.content;
    }
  });
})();
