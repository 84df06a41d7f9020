// Sends a form and fetches only the part of the page that changes. Without this script the same
// forms are sent and the same pages come back whole.
"use strict";
(() => {
  const byId = (id) => document.getElementById(id);
  const form = () => byId("entry");
  const isField = (one) => Boolean(one?.closest?.("#entry .field"));
  const fields = () => [...form().querySelectorAll(".field input, .field select")]
    .filter((field) => field.type !== "hidden" && (!field.closest("details") || field.closest("details").open));
  const shown = (field) => field.matches("select")
    ? [...field.options].find((option) => option.defaultSelected)?.value ?? "" : field.defaultValue;
  const changed = (field) => field.value !== shown(field);
  let queue = Promise.resolve(); // one request after the other, in the order of entering

  // The strip, and the bar of a phone, say in full what the field that has the focus is.
  const say = (field) => {
    const [words, unit] = byId("say")?.children ?? [];
    if (!words || !isField(field)) return;
    words.textContent = field.getAttribute("aria-label");
    words.href = `#${field.id}`;
    unit.textContent = field.dataset.unit;
    if (byId("next")) byId("next").textContent = words.textContent;
    form().elements.at.value = field.name;
  };

  const goOn = (field) => {
    const all = fields();
    const next = all[all.indexOf(field) + 1] ?? form().querySelector("a.on");
    next?.focus();
    next?.select?.();
  };

  // Puts the new book in place of the old one; what was typed meanwhile, the focus and what stood
  // open stay as they are.
  const replace = (html, sent) => {
    const old = byId("book");
    const focus = document.activeElement;
    const range = focus.matches?.("input") ? [focus.selectionStart, focus.selectionEnd] : null;
    const typed = form() ? fields().filter((one) => changed(one) && sent.get(one.name) !== one.value) : [];
    const open = [...old.querySelectorAll("details[open][id]")];
    old.outerHTML = html;
    for (const one of open) byId(one.id)?.setAttribute("open", "");
    for (const one of typed) if (byId(one.id)) byId(one.id).value = one.value;
    const wrong = typed.length ? null : document.querySelector("[aria-invalid]");
    const stays = focus.id && byId(focus.id);
    const to = wrong ?? (stays || document.querySelector("[autofocus]") || byId("page"));
    to?.focus({ preventScroll: to === stays });
    if (to === stays && range) to.setSelectionRange?.(...range);
    say(to);
  };

  const send = async (target, body) => {
    try {
      const answer = await fetch(target.action, { method: "POST", body, headers: { "X-Part": target.dataset.part } });
      const html = await answer.text();
      if (!html.startsWith("<div class=\"book")) throw new Error(answer.statusText);
      replace(html, body);
      if (answer.redirected) history.replaceState(null, "", answer.url.split("#")[0]);
    } catch {
      const [words, unit] = byId("say")?.children ?? [];
      if (!words) return;
      byId("say").setAttribute("role", "alert");
      words.textContent = "Not written: the program does not answer. What was typed is still here; Enter tries again.";
      unit.textContent = "";
    }
  };

  document.addEventListener("submit", (event) => {
    const target = event.target;
    if (!target.dataset.part) return;
    event.preventDefault();
    const field = document.activeElement;
    const entering = target === form() && !event.submitter?.name;
    const body = new URLSearchParams(new FormData(target, event.submitter));
    if (!entering || fields().some(changed)) queue = queue.then(() => send(target, body));
    if (entering && isField(field)) goOn(field);
  });

  // Leaving a field with Tab writes too; a choice is written once the hand rests on it.
  const write = (id) => {
    queue = queue.then(() => byId(id) && changed(byId(id)) && send(form(), new URLSearchParams(new FormData(form()))));
  };
  let resting = 0;
  document.addEventListener("change", ({ target: field }) => {
    if (!isField(field)) return;
    clearTimeout(resting);
    if (field.matches("select")) resting = setTimeout(write, 700, field.id);
    else setTimeout(() => { if (document.activeElement !== field) write(field.id); }, 0);
  });
  document.addEventListener("focusout", ({ target: field }) => {
    if (isField(field) && field.matches("select")) write(field.id);
  });
  document.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || !event.target.matches?.("#entry .field select")) return;
    event.preventDefault();
    goOn(event.target);
  });
  document.addEventListener("focusin", (event) => say(event.target));

  // A page that is opened stays at its head; what is typed goes to the field that waits.
  if (matchMedia("(pointer: fine)").matches && document.activeElement === document.body) {
    document.querySelector("[data-waits]")?.focus({ preventScroll: true });
  }
})();
