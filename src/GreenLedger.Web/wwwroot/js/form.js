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
