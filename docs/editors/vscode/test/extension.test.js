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
const token = new CancellationTokenSource().token;

const folder = fs.mkdtempSync(path.join(os.tmpdir(), "editor-"));
fs.cpSync(examples, folder, { recursive: true });
const editor = new Editor(JSON.parse(fs.readFileSync(path.join(shipped, "package.json"), "utf8")), folder);
editor.install();
const vscode = editor.module;
const extension = require(path.join(shipped, "extension.js"));
const context = { subscriptions: [], extensionPath: shipped, extensionUri: vscode.Uri.file(shipped) };

let pale;

before(async () => {
  editor.settings["maltwright.path"] = program;
  await extension.activate(context);
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

test("a slip is told at its word, and gone when it is put right", async () => {
  editor.type(pale, "cure at air-on 82 °C", "cure at air-on 82 °Q");
  const [finding] = await editor.until("a finding", () => editor.findings(pale).length && editor.findings(pale));
  assert.equal(finding.range.start.line, pale.find("82 °Q").line);
  assert.equal(finding.source, "maltwright");
  editor.type(pale, "82 °Q", "82 °C");
  await editor.until("silence", () => !editor.findings(pale).some((f) => f.severity === vscode.DiagnosticSeverity.Error));
});
