// The extension, as it is shipped, in a stand-in of an editor, with the real program:
//
//	MALTWRIGHT=program MALTWRIGHT_EXTENSION=folder node --test .
"use strict";

const assert = require("node:assert/strict");
const fs = require("node:fs");
const os = require("node:os");
const path = require("node:path");
const { after, before, test } = require("node:test");
const { CancellationTokenSource, Editor } = require("./editor");

const program = process.env.MALTWRIGHT;
const shipped = process.env.MALTWRIGHT_EXTENSION ?? path.join(__dirname, "..");
const examples = path.join(__dirname, "../../../../examples");
// The record of the porch is under way today: its times are moved there by whole days.
function begunLately(file) {
  const text = fs.readFileSync(file, "utf8");
  const day = 24 * 60 * 60 * 1000;
  const on = (date) => Date.parse(date + "T00:00:00Z");
  const dates = text.match(/\d{4}-\d\d-\d\d/g);
  const moved = Math.floor(Date.now() / day) * day - day - on(dates.at(-1));
  fs.writeFileSync(file, text.replace(/\d{4}-\d\d-\d\d/g, (date) => new Date(on(date) + moved).toISOString().slice(0, 10)));
}

const token = new CancellationTokenSource().token;

const folder = fs.mkdtempSync(path.join(os.tmpdir(), "editor-"));
fs.cpSync(examples, folder, { recursive: true, filter: (file) => path.basename(file) !== "broken" });
begunLately(path.join(folder, "home", "26-01.malt"));
const editor = new Editor(JSON.parse(fs.readFileSync(path.join(shipped, "package.json"), "utf8")), folder);
editor.install();
const vscode = editor.module;
const extension = require(path.join(shipped, "extension.js"));
const context = { subscriptions: [], extensionPath: shipped, extensionUri: vscode.Uri.file(shipped) };

let pale;
let running;

before(async () => {
  editor.settings["maltwright.path"] = program;
  running = await extension.activate(context);
  assert.deepEqual(editor.said, []);
  pale = editor.open(path.join(folder, "pale.malt"));
});

after(async () => {
  await extension.deactivate();
  for (const stop of context.subscriptions) stop.dispose();
  fs.rmSync(folder, { recursive: true });
});

// asked calls the provider of a kind, as the editor does.
const asked = (kind, method, ...given) => editor.provider(kind, pale)[method](pale, ...given, token);
const whole = () => new vscode.Range(0, 0, pale.lineCount, 0);
// silence waits until nothing is wrong with the file: nobody waits for an answer any more then.
const silence = () => editor.until("silence", () => !editor.findings(pale).some((f) => f.severity === vscode.DiagnosticSeverity.Error));

test("a slip is told at its word, and gone when it is put right", async () => {
  editor.type(pale, "cure at air-on 82 °C", "cure at air-on 82 °Q");
  const [finding] = await editor.until("a finding", () => editor.findings(pale).length && editor.findings(pale));
  assert.equal(finding.range.start.line, pale.find("82 °Q").line);
  assert.equal(finding.source, "maltwright");
  editor.type(pale, "82 °Q", "82 °C");
  await silence();
});

test("what may stand is offered with what is usual, and a word is explained", async () => {
  editor.type(pale, "rest 9 h in air at 14 °C", "rest 9 h in air at ");
  const at = pale.find("rest 9 h in air at ", true);
  const offered = await editor.provider("CompletionItem", pale).provideCompletionItems(pale, at, token, { triggerKind: 0 });
  const list = offered.items ?? offered;
  assert.ok(list.some(({ label }) => /^\d+ to \d+ °C$/.test(label.label ?? label)), JSON.stringify(list.map((i) => i.label)));
  editor.type(pale, "rest 9 h in air at ", "rest 9 h in air at 14 °C");
  const hover = await asked("Hover", "provideHover", pale.find("acrospire"));
  assert.match([hover.contents].flat().map((c) => c.value ?? c).join("\n"), /length of the shoot/);
});

test("a forecast stands beside the lines, and above the process", async () => {
  const hints = async () => (await editor.provider("InlayHints", pale).provideInlayHints(pale, whole(), token)) ?? [];
  const at = (list, text) => list.filter(({ position }) => position.line === pale.find(text).line).map(({ label }) => label.map?.((part) => part.value).join("") ?? label);
  let list = [];
  const look = () => void hints().then((found) => (list = found));
  await editor.until("odds at a gate", () => (look(), / in 10/.test(at(list, "gate moisture at most 10").join()))); // they take hundreds of forecasts
  assert.match(at(list, "cure at").join(), /%.*kg/);
  const [lens] = await asked("CodeLens", "provideCodeLenses");
  assert.match(lens.command.title, /kg of malt/);
  assert.equal(lens.range.start.line, pale.find("process").line);

  editor.set("maltwright.hints.gates", false);
  await editor.until("hints without those of gates", () => (look(), list.length > 0 && at(list, "gate moisture at most 10").length === 0));
  editor.set("maltwright.hints.gates", true);
  editor.set("maltwright.lenses", false);
  let lenses = [lens];
  await editor.until("no lenses", () => (asked("CodeLens", "provideCodeLenses").then((found) => (lenses = found ?? [])), lenses.length === 0));
  editor.set("maltwright.lenses", true);

  editor.set("maltwright.start", "2026-03-06 07:00");
  await editor.until("times of the clock", () => (look(), /Mar \d\d:\d\d/.test(at(list, "cure at").join())));
  editor.set("maltwright.start", "");
  await editor.until("times from the first soak", () => (look(), list.length > 0 && !/Mar/.test(at(list, "cure at").join())));
});

test("what is certain can be put right from the place", async () => {
  editor.type(pale, "turn  every 8 h", "trun  every 8 h");
  const findings = await editor.until("the finding", () => editor.findings(pale).filter((f) => f.code?.value === "unknown-word" || f.code === "unknown-word").length && editor.findings(pale));
  const range = findings[0].range;
  const actions = await editor.provider("CodeActions", pale).provideCodeActions(pale, range, { diagnostics: findings, triggerKind: 1, only: undefined }, token);
  assert.ok(actions.some(({ title }) => /turn/.test(title)), actions.map(({ title }) => title).join());
  editor.type(pale, "trun  every 8 h", "turn  every 8 h");
  await silence();
});

test("names lead to where they are defined, and are changed everywhere", async () => {
  const at = pale.find("blue tub");
  const found = [await asked("Definition", "provideDefinition", at)].flat();
  assert.match(String((found[0].uri ?? found[0].targetUri).path), /loft\.malt$/);
  const edit = await asked("Rename", "provideRenameEdits", at, "green tub");
  const changed = edit.entries().map(([uri]) => path.relative(folder, uri.path)).sort();
  assert.ok(changed.includes("pale.malt") && changed.includes("loft.malt"), changed.join());
});

test("the file is laid out, outlined, folded and coloured", async () => {
  editor.type(pale, "  make pale malt", "      make    pale malt");
  const edits = await asked("DocumentFormattingEdit", "provideDocumentFormattingEdits", { tabSize: 2, insertSpaces: true });
  assert.ok(edits.length > 0);
  editor.type(pale, "      make    pale malt", "  make pale malt");
  assert.deepEqual(await asked("DocumentFormattingEdit", "provideDocumentFormattingEdits", { tabSize: 2, insertSpaces: true }) ?? [], []);
  const [process] = (await asked("DocumentSymbol", "provideDocumentSymbols")).filter(({ name }) => name.includes("Loft pale"));
  assert.ok(process.children.length >= 4, "a stage each");
  assert.ok((await asked("FoldingRange", "provideFoldingRanges", {})).length >= 4);
  const tokens = await asked("DocumentSemanticTokens", "provideDocumentSemanticTokens");
  assert.ok(tokens.data.length > 100 && tokens.data.length % 5 === 0);
});

test("what is due stands in the status line, and a click lists it", async () => {
  const item = editor.status.find(({ id }) => id === "maltwright.due");
  await editor.until("the status line", () => item.visible);
  assert.match(item.text, /^\$\((warning|clock)\) .+ · 26-01 · .+/);
  assert.equal(item.command, "maltwright.showDue");
  editor.answers = [0];
  await vscode.commands.executeCommand("maltwright.showDue");
  const choice = editor.said.find(({ kind }) => kind === "choice");
  assert.equal(choice.lines[0].detail, "26-01");
  assert.match(editor.opened.at(-1), /home\/26-01\.malt$/);
  editor.set("maltwright.due", false);
  await editor.until("nothing in the status line", () => !item.visible);
  editor.set("maltwright.due", true);
  await editor.until("the status line again", () => item.visible);
});

test("the chart is shown beside the text, and the sheet outside", async () => {
  editor.active = pale;
  await vscode.commands.executeCommand("maltwright.showChart");
  const [panel] = editor.panels;
  assert.equal(panel.title, "Moisture of Loft pale");
  assert.equal(panel.options.enableScripts, false);
  assert.match(panel.webview.html, /default-src 'none'; img-src 'self'; style-src 'unsafe-inline'/);
  assert.match(panel.webview.html, /<source media="[^"]*" srcset="file:[^"]*\.svg"><img src="file:[^"]*\.svg" alt="Moisture of Loft pale: /);
  assert.doesNotMatch(panel.webview.html, /<script/);
  await vscode.commands.executeCommand("maltwright.showChart");
  assert.equal(editor.panels.length, 1, "it is drawn anew in its place");
  await vscode.commands.executeCommand("maltwright.chart", String(pale.uri)); // as a lens calls it
  assert.equal(editor.panels.length, 1);

  await vscode.commands.executeCommand("maltwright.openSheet");
  assert.match(editor.opened.at(-1), /^outside file:.*\.pdf$/);
  assert.equal(editor.opened.filter((what) => what.startsWith("outside")).length, 1, "the server shows nothing besides");

  await vscode.commands.executeCommand("maltwright.showChart", vscode.Uri.file(path.join(folder, "loft.malt")));
  assert.deepEqual(editor.said.at(-1), { kind: "error", said: "It cannot be drawn: loft.malt holds no process and no record that can be drawn", buttons: [] });
});

test("the server is started again", async () => {
  const started = () => editor.log.filter((line) => line.includes("started maltwright")).length;
  assert.equal(started(), 1);
  await vscode.commands.executeCommand("maltwright.restart");
  assert.equal(started(), 2);
  editor.type(pale, "make pale malt", "make pail malt");
  await editor.until("a finding of the new one", () => editor.findings(pale).some((f) => f.range.start.line === pale.find("pail").line));
  editor.type(pale, "make pail malt", "make pale malt");
  await silence();
});

test("a server that is killed is there again, with what is open", async () => {
  const killed = running.client()._serverProcess; // a field of the client's own
  killed.kill("SIGKILL");
  await editor.until("another process", () => running.client()._serverProcess !== killed && running.client().isRunning());
  editor.type(pale, "make pale malt", "make pail malt");
  await editor.until("a finding of the new one", () => editor.findings(pale).some((f) => f.range.start.line === pale.find("pail").line));
  editor.type(pale, "make pail malt", "make pale malt");
  await silence();
  assert.ok(!editor.said.some(({ said }) => /ended several times/.test(said)));
});
