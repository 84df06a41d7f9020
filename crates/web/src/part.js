// Sends a form and fetches only the part of the page that changes. Without this script the same
// forms are sent and the same pages come back whole.
"use strict";
(() => {
  const form = () => document.getElementById("entry");
  const fields = () => [...form().querySelectorAll(".field input, .field select")]
    .filter((field) => field.type !== "hidden" && (!field.closest("details") || field.closest("details").open));
  const changed = (field) => field.value !== (field.matches("select") ? chosen(field) : field.defaultValue);
  const chosen = (select) => [...select.options].find((option) => option.defaultSelected)?.value ?? "";
  let queue = Promise.resolve(); // one request after the other, in the order of entering

  // The strip, and the bar of a phone, say in full what the field that has the focus is.
  const say = (field) => {
    const strip = document.getElementById("say");
    if (!strip || !field.closest(".field")) return;
    strip.children[0].textContent = field.getAttribute("aria-label");
    strip.children[1].textContent = field.dataset.unit;
    const next = document.getElementById("next");
    if (next) next.textContent = field.getAttribute("aria-label");
    form().elements.at.value = field.name;
  };

  const goOn = (field) => {
    const all = fields();
    const next = all[all.indexOf(field) + 1];
    if (!next) return;
    next.focus();
    if (next.select) next.select();
  };

  // Puts the new book in place of the old one; what was typed meanwhile, the focus and what stood
  // open stay as they are.
  const replace = (html, sent) => {
    const old = document.getElementById("book");
    const typed = new Map();
    if (form()) for (const field of fields()) {
      if (changed(field) && sent.get(field.name) !== field.value) typed.set(field.name, field.value);
    }
    const focus = document.activeElement?.id;
    const open = [...old.querySelectorAll("details[open][id]")].map((one) => one.id);
    old.outerHTML = html;
    for (const id of open) document.getElementById(id)?.setAttribute("open", "");
    for (const [name, value] of typed) {
      const field = document.getElementsByName(name)[0];
      if (field) field.value = value;
    }
    const wrong = document.querySelector("[aria-invalid]");
    const stays = focus && document.getElementById(focus);
    const to = wrong && !typed.size ? wrong : stays || document.querySelector("[autofocus]");
    if (to) { to.focus({ preventScroll: to === stays }); say(to); }
  };

  const send = async (target, body) => {
    try {
      const answer = await fetch(target.action, { method: "POST", body, headers: { "X-Part": target.dataset.part } });
      const html = await answer.text();
      if (!html.startsWith("<div class=\"book")) throw new Error(answer.statusText);
      replace(html, body);
      if (answer.redirected) history.replaceState(null, "", answer.url.split("#")[0]);
    } catch {
      const strip = document.getElementById("say");
      const words = "Not written: the program does not answer. What was typed is still here; Enter tries again.";
      if (strip) { strip.setAttribute("role", "alert"); strip.children[0].textContent = words; }
    }
  };

  document.addEventListener("submit", (event) => {
    const target = event.target;
    if (!target.dataset.part) return;
    event.preventDefault();
    const body = new URLSearchParams(new FormData(target, event.submitter));
    const field = document.activeElement;
    queue = queue.then(() => send(target, body));
    if (target.id === "entry" && field?.closest(".field")) goOn(field);
  });

  // Leaving a field with Tab, or choosing from a list, writes too.
  document.addEventListener("change", (event) => {
    const field = event.target;
    if (!field.closest?.("#entry .field")) return;
    const sendLater = () => { if (document.contains(field) && changed(field) && document.activeElement !== field || field.matches("select")) form().requestSubmit(); };
    setTimeout(sendLater, 0);
  });
  document.addEventListener("focusin", (event) => { if (event.target.closest(".field")) say(event.target); });
})();
