// Moves the focus to the summary of errors after a refused form, asks before acts that name a thing, and keeps
// the anti-forgery token on requests that htmx sends.
(() => {
  const summary = document.querySelector("[data-errors]");
  if (summary) {
    summary.focus();
  }

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
