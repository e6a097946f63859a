// What people are told where the program cannot be had, and where it is looked for.
"use strict";

const assert = require("node:assert/strict");
const fs = require("node:fs");
const os = require("node:os");
const path = require("node:path");
const { after, test } = require("node:test");
const { Editor } = require("./editor");

const own = path.join(__dirname, "..");
const folder = fs.mkdtempSync(path.join(os.tmpdir(), "program-"));
const manifest = JSON.parse(fs.readFileSync(path.join(own, "package.json"), "utf8"));
const editor = new Editor(manifest, folder);
editor.install();
const { Endings } = require("../lib/endings");
const { find, serves } = require("../lib/program");
const { Session } = require("../lib/session");

after(() => fs.rmSync(folder, { recursive: true }));

function script(name, lines) {
  const file = path.join(folder, name);
  fs.mkdirSync(path.dirname(file), { recursive: true });
  fs.writeFileSync(file, `#!/bin/sh\n${lines}\n`);
  fs.chmodSync(file, 0o755);
  return file;
}

test("a bare name is looked for on the PATH, and then where Go puts programs", () => {
  const first = script("one/maltwright", "");
  const home = script("home/go/bin/maltwright", "");
  const env = { PATH: [path.join(folder, "none"), path.join(folder, "one")].join(path.delimiter) };
  assert.equal(find("maltwright", env, path.join(folder, "home")), first);
  assert.equal(find("maltwright", { PATH: "" }, path.join(folder, "home")), home);
  assert.equal(find("~/go/bin/maltwright", { PATH: "" }, path.join(folder, "home")), home);
  assert.equal(find(first, {}, folder), first);
});

test("a folder that is opened brings no program with it", () => {
  script("maltwright", "");
  const before = process.cwd();
  process.chdir(folder);
  try {
    for (const [wanted, PATH] of [["maltwright", "."], ["maltwright", ""], ["maltwright", `bin${path.delimiter}.`], ["./maltwright", folder], ["one/maltwright", folder], ["", folder], ["../x", folder]])
      assert.throws(() => find(wanted, { PATH }, path.join(folder, "nobody")), { kind: "not found" }, `${wanted} on ${PATH}`);
  } finally {
    process.chdir(before);
  }
  const { scope } = manifest.contributes.configuration.properties["maltwright.path"];
  assert.equal(scope, "machine", "or a folder could set it");
  assert.deepEqual(manifest.capabilities.untrustedWorkspaces.restrictedConfigurations, ["maltwright.path"]);
});

test("what is no file that runs is not the program", () => {
  const plain = path.join(folder, "plain");
  fs.writeFileSync(plain, "");
  fs.chmodSync(plain, 0o644);
  for (const file of [plain, folder, path.join(folder, "nothing")]) assert.throws(() => find(file, {}, folder), { kind: "not found" });
});

test("a program without a server is told as too old, with its version", async () => {
  const old = script("old/maltwright", '[ "$1" = version ] && echo "maltwright 0.1.0, built with go" && exit; exit 2');
  await assert.rejects(serves(old, {}), { kind: "too old", file: old, version: "maltwright 0.1.0" });
  await assert.rejects(serves(script("other", "exit 1"), {}), { kind: "too old", version: "" });
  const served = script("new/maltwright", '[ "$1 $2" = "lsp --help" ]');
  assert.equal(await serves(served, {}), served);
});

test("people are told what to do, and can do it from the message", async () => {
  const context = { subscriptions: [], extensionPath: own };
  const connect = async (wanted) => serves(wanted, {});
  editor.set("maltwright.path", "maltwright-that-nobody-has");
  editor.answers = ["Open Settings"];
  const session = new Session(context, connect);
  await session.start();
  await editor.until("the settings", () => editor.opened.includes("settings maltwright.path"));
  const [{ kind, said, buttons }] = editor.said;
  assert.equal(kind, "error");
  assert.match(said, /^There is no program "maltwright-that-nobody-has" on the PATH, so nothing is checked\. Install maltwright .*docs\/install\.md/);
  assert.deepEqual(buttons, ["Open Settings", "Try Again"]);

  editor.set("maltwright.path", path.join(folder, "old/maltwright")); // it starts again by itself
  await editor.until("a second message", () => editor.said.length === 2);
  assert.match(editor.said[1].said, /^maltwright 0\.1\.0 at .*old\/maltwright cannot serve an editor/);

  await editor.module.commands.executeCommand("maltwright.showDue");
  assert.equal(editor.said.at(-1).said, "Nothing is due in this folder.");
  editor.active = { uri: editor.module.Uri.file(path.join(folder, "pale.malt")) };
  await editor.module.commands.executeCommand("maltwright.showChart");
  assert.match(editor.said.at(-1).said, /^The server does not run/);
  await editor.module.commands.executeCommand("maltwright.showLog");
  assert.equal(editor.opened.at(-1), "log");
  await session.stop();
  context.subscriptions.forEach((one) => one.dispose());
  assert.equal(editor.commands.size, 0);
});

test("a server that ends before it begins is told once, and nothing is left of it", async () => {
  const { connect } = require("../lib/server");
  editor.said.length = 0;
  editor.settings["maltwright.path"] = script("broken/maltwright", '[ "$2" = --help ] && exit; exit 3');
  const context = { subscriptions: [], extensionPath: own };
  const session = new Session(context, connect);
  await session.start();
  assert.equal(session.client, undefined);
  assert.match(editor.said[0].said, /^The maltwright server did not start: /);
  assert.deepEqual(editor.said[0].buttons, ["Show the Log", "Try Again"]);
  assert.equal(editor.said.length, 1, JSON.stringify(editor.said));
  await session.stop();
  context.subscriptions.forEach((one) => one.dispose());
});

test("a server that ends by itself is started again, but not for ever", () => {
  let now = 0;
  let told = 0;
  const endings = new Endings(() => told++, () => now);
  const [leave, again] = [1, 2];
  assert.equal(endings.closed().action, leave, "it never began");
  endings.began = true;
  for (let i = 0; i < 4; i++) assert.equal(endings.closed().action, again);
  now = 4 * 60 * 1000;
  for (let i = 0; i < 4; i++) assert.equal(endings.closed().action, again, "those are long ago");
  assert.equal(told, 0);
  assert.equal(endings.closed().action, leave);
  assert.equal(told, 1);
});
