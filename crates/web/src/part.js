// Sends a form and fetches only the part of the page that changes. Without this script the same
// forms are sent and the same pages come back whole.
"use strict";
(() => {
  const byId = (id) => document.getElementById(id);
  const form = () => byId("entry");
  const isField = (one) => Boolean(one?.closest?.("#entry .field"));
  const fields = () => [...(form()?.querySelectorAll(".field input:not([type=hidden]), .field select") ?? [])]
    .filter((field) => field.closest("details")?.open ?? true);
  const shown = (field) => field.matches("select")
    ? [...field.options].find((option) => option.defaultSelected)?.value ?? "" : field.defaultValue;
  const changed = (field) => field.value !== shown(field);
  const filled = (target, button) => new URLSearchParams(new FormData(target, button));
  let queue = Promise.resolve(); // one request after the other, in the order of entering
  let waiting = 0; // requests that are not answered yet
  const inTurn = (request) => {
    waiting += 1;
    queue = queue.then(request).finally(() => { waiting -= 1; });
  };
  let turn = 0; // counts what was sent, so that a late answer is not taken for a new one

  // The strip, and the bar of a phone, say in full what the field that has the focus is.
  const say = (field) => {
    if (!isField(field)) return;
    const [words, unit] = byId("say").children;
    words.textContent = field.getAttribute("aria-label");
    words.href = `#${field.id}`;
    unit.textContent = field.dataset.unit;
    if (byId("next")) byId("next").textContent = words.textContent;
    form().elements.at.value = field.name;
  };
  const goOn = (field) => {
    const all = fields();
    const next = all[all.indexOf(field) + 1] ?? byId("on");
    next?.focus();
    next?.select?.();
  };

  // The same thing in a new book: by its own id, or a group's line by the group's.
  const again = (one) => byId(one.id) ?? (one.matches("summary") ? byId(one.parentElement.id)?.querySelector("summary") : null);
  // Puts the new book in place of the old one; what was typed meanwhile, the focus and what stood
  // open stay as they are.
  const replace = (html, sent) => {
    const focus = document.activeElement;
    const range = Number.isInteger(focus.selectionStart) ? [focus.selectionStart, focus.selectionEnd] : null;
    const typed = fields().filter((one) => changed(one) && sent.get(one.name) !== one.value);
    const open = [...byId("book").querySelectorAll("details[open][id]")];
    const turned = [...document.querySelectorAll("form[data-turned] input[type=range]")];
    byId("book").outerHTML = html;
    for (const one of open) byId(one.id)?.setAttribute("open", "");
    for (const one of typed) if (byId(one.id)) byId(one.id).value = one.value;
    const wrong = typed.length ? null : document.querySelector("[aria-invalid]");
    const stays = again(focus);
    const to = wrong ?? (stays || document.querySelector("[autofocus]") || byId("page"));
    to.focus({ preventScroll: to === stays });
    if (to !== stays) to.select?.();
    else if (range) to.setSelectionRange(...range);
    say(to);
    slides();
    for (const one of turned) if (byId(one.id)) byId(one.id).value = one.value;
    new Set(turned.map((one) => byId(one.id)?.form)).forEach((one) => one && tryOut(one));
    askLater();
  };
  const fetched = async (address, asked) => {
    const answer = await fetch(address, { ...asked, headers: { "X-Part": "book" } });
    const html = await answer.text();
    if (!html.startsWith("<div class=\"book")) throw new Error(answer.statusText);
    return [html, answer];
  };

  const send = async (target, body) => {
    turn += 1;
    try {
      const [html, answer] = await fetched(target.action, { method: "POST", body, keepalive: true });
      replace(html, body);
      if (answer.redirected) history.replaceState(null, "", answer.url.split("#")[0]);
    } catch {
      if (!byId("say")) return target.submit();
      byId("say").setAttribute("role", "alert");
      byId("say").children[0].textContent =
        "Not written: the program does not answer. What was typed is still here; Enter tries again.";
    }
  };

  // What takes some seconds to work out is asked for after a while of quiet.
  const askLater = () => {
    const now = turn;
    const ask = async () => {
      if (turn !== now || !byId("later")) return;
      byId("later").firstElementChild.textContent = "Working out how heat flows";
      const [html] = await fetched(byId("later").dataset.later).catch(() => []);
      if (html && turn === now) replace(html, new URLSearchParams());
    };
    if (byId("later")) setTimeout(ask, 1200);
  };

  document.addEventListener("submit", (event) => {
    const { target, submitter } = event;
    if (!target.dataset.part && !target.dataset.try) return;
    event.preventDefault();
    if (target.dataset.try) return tryOut(target);
    const field = document.activeElement;
    const entering = target === form() && !submitter?.name;
    const body = filled(target, submitter);
    if (!entering || fields().some(changed)) inTurn(() => send(target, body));
    if (entering && isField(field)) goOn(field);
  });

  // Leaving a field with Tab writes too; a choice is written once the hand rests on it.
  const write = (id) =>
    inTurn(() => byId(id) && changed(byId(id)) && send(form(), filled(form())));
  let resting = 0;
  document.addEventListener("change", ({ target: field }) => {
    clearTimeout(resting);
    if (isField(field) && field.matches("select")) resting = setTimeout(write, 700, field.id);
  });
  document.addEventListener("focusout", ({ target: field }) => {
    if (isField(field)) setTimeout(() => document.activeElement?.id === field.id || write(field.id));
  });
  document.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && event.target.matches("#entry .field select")) event.preventDefault(), goOn(event.target);
  });
  document.addEventListener("focusin", (event) => say(event.target));

  // Nothing is left behind unwritten: a link is followed once all is written and nothing is wrong;
  // a page that goes away all the same sends what it still holds.
  const unwritten = () => waiting > 0 || fields().some(changed);
  document.addEventListener("click", (event) => {
    const link = event.target.closest?.("a[href]");
    const elsewhere = link && !link.getAttribute("href").startsWith("#") && !link.target;
    if (!elsewhere || event.ctrlKey || event.metaKey || event.shiftKey || !unwritten()) return;
    event.preventDefault();
    const go = () => {
      if (!unwritten() && !document.querySelector("#entry [aria-invalid]")) location.assign(link.href);
    };
    setTimeout(() => queue.then(go));
  });
  addEventListener("pagehide", () => {
    if (form() && unwritten()) navigator.sendBeacon(form().action, filled(form()));
  });

  // Drawings of several moments: one at a time, chosen by a slider.
  const slide = (slider) => {
    const shown = [...slider.closest("[data-moments]").querySelectorAll("[data-says]")];
    shown.forEach((one, at) => { one.hidden = at !== Number(slider.value); });
    slider.setAttribute("aria-valuetext", shown[slider.value].dataset.says);
  };
  const slides = () => {
    for (const slider of document.querySelectorAll("[data-moments] input")) {
      slider.parentElement.hidden = false;
      slide(slider);
    }
  };
  document.addEventListener("input", ({ target }) => target.matches("[data-moments] input") && slide(target));

  // A try-out follows its slider: one question at a time, the latest last. What came of it is read
  // out once the slider rests.
  const tryOut = async (form) => {
    form.dataset.turned = "";
    for (const slider of form.querySelectorAll("input[type=range]")) {
      const words = `${slider.value} ${slider.dataset.unit}`;
      slider.setAttribute("aria-valuetext", words);
      form.querySelector(`output[for="${slider.id}"]`).textContent = words;
    }
    form.again = form.asking;
    if (form.asking) return;
    form.asking = true;
    const outcome = form.querySelector(".outcome");
    do {
      form.again = false;
      const answer = await fetch(`${form.dataset.try}?${filled(form)}`).catch(() => null);
      if (answer?.ok) outcome.innerHTML = await answer.text();
      else outcome.textContent = "The program does not answer; turn the slider again.";
    } while (form.again);
    form.asking = false;
    clearTimeout(form.resting);
    form.resting = setTimeout(() => {
      form.querySelector("[role=status]").textContent = outcome.querySelector("[data-say]")?.dataset.say ?? outcome.textContent;
    }, 900);
  };
  document.addEventListener("input", ({ target }) => target.form?.dataset.try && tryOut(target.form));

  // A page that is opened stays at its head; what is typed goes to the field that waits.
  const idle = matchMedia("(pointer: fine)").matches && document.activeElement === document.body;
  if (idle) document.querySelector("[data-waits]")?.focus({ preventScroll: true });
  slides();
  askLater();
})();
