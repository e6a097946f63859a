"use strict";
// What a page cannot do by itself. Every page works without it.
(() => {
  const $ = (what, from = document) => from.querySelector(what);
  const all = (what, from = document) => [...from.querySelectorAll(what)];
  const make = (tag, text, more = {}) => Object.assign(document.createElement(tag), { textContent: text }, more);
  const now = () => Date.now() + ahead;
  let ahead = 0; // how far the clock of the machine is ahead of this one, ms; kept for a page that is opened while it is away
  try { ahead = Number(localStorage.getItem("maltwright.ahead")) || 0; } catch { ahead = 0; }

  // Lengths of time, as the page writes them.
  const lasting = (ms) => {
    const min = Math.round(Math.abs(ms) / 60000), h = Math.floor(min / 60), d = Math.floor(h / 24);
    if (d > 0) return `${d} d ${h % 24} h`;
    return h > 0 ? `${h} h ${min % 60} min` : `${min} min`;
  };
  const two = (n) => String(n).padStart(2, "0");
  const stamp = (t) => `${t.getFullYear()}-${two(t.getMonth() + 1)}-${two(t.getDate())}T${two(t.getHours())}:${two(t.getMinutes())}`;

  // The store of the browser: readings that wait for the machine. Another folder may be shown at the same address, and has its own.
  const KEPT = "maltwright.kept." + document.body.dataset.folder;
  const kept = () => { try { return JSON.parse(localStorage.getItem(KEPT)) || []; } catch { return []; } };
  const keep = (list) => { try { localStorage.setItem(KEPT, JSON.stringify(list)); return true; } catch { return false; } };

  // Countdown, title and sound.
  let title = document.title, due = [], sound = null;
  const told = new Map(); // of each visit when it fell due, once that was told
  const count = () => {
    const left = $("#left");
    if (left && left.dataset.due) {
      const ms = new Date(left.dataset.due) - now();
      left.textContent = ms > 0 ? "in " + lasting(Math.max(ms, 60000)) : ms > -60000 ? "now" : lasting(ms) + " ago";
    }
    const open = due.filter((d) => new Date(d.at) <= now());
    document.title = open.length ? `due: ${open[0].name}, ${open[0].says}` : title;
    for (const d of open) if (tell(d) && now() - new Date(d.at) < HOUR) ring();
  };
  // tell says whether a visit was not told yet: a forecast may move it by some minutes.
  const HOUR = 3600000;
  const tell = (d) => {
    const key = d.batch + d.says, at = +new Date(d.at), was = told.get(key);
    if (was === undefined || at - was > HOUR) told.set(key, at);
    return was === undefined || at - was > HOUR;
  };
  const ring = () => {
    if (!sound) return;
    for (let i = 0; i < 6; i++) {
      const tone = sound.createOscillator(), loud = sound.createGain(), at = sound.currentTime + i * 0.7;
      tone.frequency.value = i % 2 ? 660 : 880;
      loud.gain.setValueAtTime(0.0001, at);
      loud.gain.exponentialRampToValueAtTime(0.4, at + 0.03);
      loud.gain.exponentialRampToValueAtTime(0.0001, at + 0.6);
      tone.connect(loud).connect(sound.destination);
      tone.start(at);
      tone.stop(at + 0.65);
    }
  };
  const wake = $("#wake"), Audio = window.AudioContext || window.webkitAudioContext;
  if (wake && Audio) {
    const button = make("button", "Sound when a visit falls due", { type: "button", className: "plain" });
    button.setAttribute("aria-pressed", "false");
    button.onclick = () => {
      if (sound) { sound.close(); sound = null; } else { sound = new Audio(); sound.resume(); ring(); }
      button.setAttribute("aria-pressed", String(!!sound));
      button.textContent = sound ? "No sound when a visit falls due" : "Sound when a visit falls due";
    };
    wake.append(button);
  }

  // What waits, and whether the machine is reached.
  let away = 0; // since when the machine is not reached, or lets the page in no more
  let answered = 0; // with what status it then answers; 0 where it does not
  let news = "", changed = false, rung = 0;
  const show = () => {
    const waiting = $("#waiting");
    if (!waiting) return;
    waiting.setAttribute("role", "status");
    const list = kept();
    waiting.replaceChildren();
    const say = (text, mark) => {
      const p = make("p", "");
      if (mark) p.append(make("strong", mark, { className: "mark" }), " ");
      p.append(text);
      waiting.append(p);
      return p;
    };
    if (away) {
      const plain = location.protocol === "http:" && !["localhost", "127.0.0.1", "[::1]"].includes(location.hostname);
      const since = new Date(away).toTimeString().slice(0, 5), stays = list.length ? "What waits below stays on this phone, and is sent then." : "Readings are kept on this phone until then.";
      if (answered === 401) say(`The page was started anew and has another link. Open that one in this browser, by the code or the address that the machine shows now. ${stays}`, "new link needed");
      else if (answered) say(`The machine is there, but has not let this page in since ${since} (it answers ${answered}). Readings are kept on this phone, and sent when it does.`, "away");
      else say(`The machine has not been reached since ${since}. Readings are kept on this phone, and sent when it is seen again.${plain ? " Leave this page open: over plain HTTP it cannot be opened again before then; that needs a certificate that the phone trusts." : ""}`, "away");
    }
    if (news) say(news, "written");
    if (changed) {
      const p = say("The record or the process was edited since. ", "changed");
      p.append(make("a", "Look again", { href: location.pathname }));
    }
    for (const x of list) {
      const p = say(`${x.name}, taken ${x.taken.replace("T", " ")}${x.says ? ": " + x.says : ""} `, x.state === "doubtful" ? "doubtful" : x.state === "refused" ? "not written" : "waiting");
      if (x.state === "doubtful" || x.state === "refused") p.append(again(x), " ");
      p.append(make("button", "Forget it", { type: "button", className: "plain", onclick: () => { keep(kept().filter((y) => y.own !== x.own)); show(); } }));
    }
    waiting.hidden = !waiting.childElementCount;
    waiting.className = waiting.hidden ? "" : "said";
  };
  // again is a form that shows a kept reading once more, to be put right or written all the same.
  const again = (x) => {
    const form = make("form", "", { method: "post", action: `/batch/${x.batch}/reading`, className: "inline" });
    for (const [name, value] of new URLSearchParams(x.form)) form.append(make("input", "", { type: "hidden", name, value }));
    form.append(make("input", "", { type: "hidden", name: "own", value: x.own }), make("button", "See it again"));
    return form;
  };

  const ask = async (path, more = {}) => {
    const stop = new AbortController(), timer = setTimeout(() => stop.abort(), more.patience || 8000);
    try { return await fetch(path, { cache: "no-store", credentials: "same-origin", signal: stop.signal, ...more }); } finally { clearTimeout(timer); }
  };

  // reach asks, and takes a refusal for no answer.
  const reach = async (path, more) => {
    const r = await ask(path, more);
    if (!r.ok) throw Object.assign(new Error(path), { status: r.status });
    return r;
  };
  const lost = (e) => { away = away || now(); answered = e.status || 0; };

  // The pulse: what is due, and whether anything was edited.
  const EVERY = 30000, MOST = 300000;
  let gap = EVERY, timer = 0;
  const pulse = async () => {
    clearTimeout(timer);
    try {
      const b = await (await reach("/pulse")).json();
      ahead = new Date(b.now) - Date.now();
      if (Math.abs(ahead) < 2000) ahead = 0;
      try { localStorage.setItem("maltwright.ahead", ahead); } catch { /* it is asked for again */ }
      if (!rung++) b.due.filter((d) => d.late).forEach(tell); // it was late before the page was opened
      due = b.due;
      away = answered = 0;
      gap = EVERY;
      await send();
      const mine = document.body.dataset.version;
      if (mine && b.version !== mine) {
        changed = busy() || !(await renew());
      }
    } catch (e) {
      lost(e);
      gap = Math.min(2 * gap, answered || kept().length ? 2 * EVERY : MOST);
    }
    count();
    show();
    timer = setTimeout(pulse, gap);
  };
  const busy = () => all("form").some((f) => f.dataset.touched) || $("main form :focus");
  // renew puts the page as it is now in the place of what is shown, and leaves open what is open.
  const renew = async () => {
    const r = await ask(location.pathname);
    if (!r.ok) return false;
    const doc = new DOMParser().parseFromString(await r.text(), "text/html");
    if (busy()) return false;
    if (doc.body.dataset.folder !== document.body.dataset.folder) { location = "/"; return true; } // another folder is shown here by now
    const open = new Set(all("main details[open] > summary").map((e) => e.textContent));
    const at = document.activeElement && $("main").contains(document.activeElement) && document.activeElement.id;
    for (const part of ["main", ".head"]) $(part).replaceWith(document.importNode($(part, doc), true));
    all("main details").forEach((e) => { e.open = open.has($("summary", e).textContent); });
    if (at && document.getElementById(at)) document.getElementById(at).focus();
    document.body.dataset.version = doc.body.dataset.version || "";
    title = doc.title;
    pads();
    return true;
  };

  // send hands over what was kept. Each reading has a name of its own, by which it is written once.
  let sending = false, asked = false;
  const send = async () => {
    const MOST = 50000, fits = (x) => x.form.length < MOST; // the machine takes 64 KiB at once
    if (!kept().every(fits)) keep(kept().map((x) => fits(x) ? x : { ...x, state: "refused", says: "it is too long" }));
    let size = 0;
    const list = kept().filter((x) => fits(x) && (!asked || !x.state || x.state === "waits")).slice(0, 50).filter((x) => (size += x.form.length + 200) < MOST + 200); // what was doubtful may be written by now
    if (!list.length || sending) return;
    sending = asked = true;
    try {
      const r = await ask("/kept", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(list.map(({ own, batch, form }) => ({ own, batch, form }))), patience: 60000 });
      if (!r.ok) return;
      const done = new Map((await r.json()).map((o) => [o.own, o]));
      const said = [];
      keep(kept().flatMap((x) => {
        const o = done.get(x.own);
        if (!o) return [x];
        if (o.state === "written" || o.state === "there") { said.push(`${o.line || x.name}${o.says ? ": " + o.says : ""}`); return []; }
        return [{ ...x, state: o.state, says: o.says }];
      }));
      if (said.length) { news = said.join("; "); changed = true; }
    } finally { sending = false; }
  };

  // A form of a reading goes to the machine as it would by itself or, where that is away, into the store. There each has a name
  // that is made here, for the forms of a page share theirs. Only the answer to a reading has one of its own: it may have been sent already.
  const later = (form) => {
    const data = new URLSearchParams(new FormData(form)), at = data.get("at") || new Date(now()).toISOString(); // with its zone: the machine may go by another
    const taken = at.endsWith("Z") ? stamp(new Date(at)) : at;
    data.set("at", at);
    data.delete("write");
    const own = data.get("own") || (!form.dataset.entry && data.get("once")) || fresh();
    for (const name of ["once", "own"]) data.delete(name);
    const batch = form.getAttribute("action").split("/")[2];
    const name = (form.closest("details") || document).querySelector("summary, h1").textContent.trim() + valueOf(data);
    const list = kept().filter((x) => x.own !== own);
    if (!keep([...list, { own, batch, name, taken, form: String(data) }])) return false;
    form.reset();
    delete form.dataset.touched;
    return true;
  };
  const fresh = () => [...crypto.getRandomValues(new Uint8Array(12))].map((b) => b.toString(16).padStart(2, "0")).join("");
  const valueOf = (data) => {
    const said = ["value", "ounces", "none", "quarter", "half", "three", "whole", "over", "text"].map((n) => data.get(n)).filter(Boolean).join(" ");
    return said ? " " + said + (data.get("unit") ? " " + data.get("unit") : "") : "";
  };
  document.addEventListener("submit", async (e) => {
    const form = e.target;
    if (!/\/reading$/.test(form.getAttribute("action") || "") || form.dataset.sent) return;
    e.preventDefault();
    const by = e.submitter;
    if (by) by.disabled = true;
    try {
      await reach("/pulse", { patience: 4000 });
      if (by && by.name) form.append(make("input", "", { type: "hidden", name: by.name, value: by.value }));
      form.dataset.sent = "yes";
      form.submit();
    } catch (e) {
      lost(e);
      const judge = $(".judge", form);
      if (!later(form) && judge) judge.textContent = "The machine is out of reach, and this browser keeps nothing: write the reading on paper.";
      show();
      const waiting = $("#waiting");
      if (waiting && !waiting.hidden) waiting.scrollIntoView();
      clearTimeout(timer);
      timer = setTimeout(pulse, gap);
    }
    if (by) by.disabled = false;
  });

  // Judge while a figure is typed.
  let typing = 0;
  document.addEventListener("input", (e) => {
    const form = e.target.form;
    if (!form) return;
    form.dataset.touched = "yes";
    if (!form.dataset.entry) return;
    clearTimeout(typing);
    typing = setTimeout(() => judge(form), 900);
  });
  const judge = async (form) => {
    const out = $(".judge", form), typed = String(new URLSearchParams(new FormData(form)));
    if (!out || !all("input[type=text]", form).some((i) => i.value)) return;
    try {
      const r = await ask(form.action, { method: "POST", headers: { "Content-Type": "application/x-www-form-urlencoded" }, body: typed });
      const doc = new DOMParser().parseFromString(await r.text(), "text/html");
      if (typed !== String(new URLSearchParams(new FormData(form)))) return; // it is another by now
      out.textContent = all("#answer > p", doc).map((p) => p.textContent.trim()).filter(Boolean).join(". ");
    } catch { out.textContent = ""; }
  };

  // A number pad for thumbs, in the place of the keyboard of the phone.
  const pad = (group) => {
    const inputs = all("input:not([type=hidden])", group), box = make("div", "", { className: "pad" });
    let to = inputs[0];
    const take = (input) => { to = input; inputs.forEach((i) => i.classList.toggle("typed", inputs.length > 1 && i === to)); };
    box.setAttribute("role", "group");
    box.setAttribute("aria-label", "Keys for " + inputs.map((i) => i.labels[0].textContent).join(" and "));
    const keys = ["1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "⌫"];
    for (const k of keys) {
      const b = make("button", k, { type: "button" });
      if (k === "⌫") b.setAttribute("aria-label", "take the last digit back");
      if (k === ".") b.setAttribute("aria-label", "point");
      b.onclick = () => {
        to.value = k === "⌫" ? to.value.slice(0, -1) : to.value + k;
        to.dispatchEvent(new Event("input", { bubbles: true }));
      };
      box.append(b);
    }
    for (const i of inputs) { i.inputMode = "none"; i.addEventListener("focus", () => take(i)); }
    take(to);
    group.append(box);
  };
  const pads = () => { if (matchMedia("(pointer: coarse)").matches) all(".pair, .big:not(.pair .big)").forEach(pad); };

  pads();
  // Over TLS what was shown is kept, so that it can be opened again while the machine is away.
  if (location.protocol === "https:" && navigator.serviceWorker) {
    navigator.serviceWorker.register("/worker.js").then(() => navigator.serviceWorker.ready).then(() => {
      const shown = ["/", location.pathname, ...all("link[rel=stylesheet]").map((e) => e.href), ...all("script[src]").map((e) => e.src)];
      shown.forEach((at) => fetch(at).catch(() => {}));
    }).catch(() => {}); // it goes without
  }

  count();
  show();
  setInterval(count, 5000);
  addEventListener("online", pulse);
  addEventListener("pageshow", () => all("form").forEach((f) => { delete f.dataset.sent; })); // it may be sent again by who came back to it
  document.addEventListener("visibilitychange", () => { if (!document.hidden) pulse(); });
  pulse();
})();
