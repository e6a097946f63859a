// A stand-in for the module that an editor hands to its extensions, as far as the extension and its
// client ask for it. What people would see and answer is kept in the fields of the Editor.
"use strict";

const fs = require("node:fs");
const Module = require("node:module");
const path = require("node:path");
const values = require("./values");
const { Document } = require("./document");

const { Uri } = values;

// Events are what is listened to.
class Events {
  constructor() {
    this.listeners = new Set();
    this.event = (heard, self, list) => {
      const listener = self ? heard.bind(self) : heard;
      this.listeners.add(listener);
      const stop = new Disposable(() => this.listeners.delete(listener));
      list?.push(stop);
      return stop;
    };
  }
  fire(what) {
    for (const listener of [...this.listeners]) listener(what);
  }
  dispose() {
    this.listeners.clear();
  }
}

class Disposable {
  constructor(run) {
    this.dispose = run;
  }
  static from(...list) {
    return new Disposable(() => list.forEach((one) => one.dispose()));
  }
}

class CancellationTokenSource {
  constructor() {
    const asked = new Events();
    this.token = { isCancellationRequested: false, onCancellationRequested: asked.event };
    this.cancel = () => {
      this.token.isCancellationRequested = true;
      asked.fire();
    };
  }
  dispose() {}
}

class Editor {
  // manifest is the package.json of the extension, whose defaults are the settings.
  constructor(manifest, folder) {
    this.settings = Object.fromEntries(Object.entries(manifest.contributes.configuration.properties).map(([name, { default: value }]) => [name, value]));
    this.folders = [{ uri: Uri.file(folder), name: path.basename(folder), index: 0 }];
    this.documents = [];
    this.active = undefined;
    this.commands = new Map();
    this.providers = []; // { kind, selector, provider, more }
    this.diagnostics = new Map(); // by URI and owner
    this.log = [];
    this.said = []; // messages, with their buttons
    this.answers = []; // what people answer to messages and choices, in order
    this.opened = []; // documents and files that were shown, here or outside
    this.panels = [];
    this.status = [];
    this.on = new Proxy({}, { get: (all, name) => (all[name] ??= new Events()) });
    this.module = { version: "1.100.0", ...values, EventEmitter: Events, Disposable, CancellationTokenSource, commands: this.forCommands(), env: this.forEnv(), languages: this.forLanguages(), window: this.forWindow(), workspace: this.forWorkspace() };
  }

  // install makes require("vscode") give the stand-in.
  install() {
    const find = Module._resolveFilename;
    Module._resolveFilename = (name, ...more) => (name === "vscode" ? name : find.call(Module, name, ...more));
    require.cache.vscode = { id: "vscode", filename: "vscode", loaded: true, exports: this.module };
  }

  forCommands() {
    return {
      registerCommand: (name, run) => {
        if (this.commands.has(name)) throw new Error(`command '${name}' already exists`);
        this.commands.set(name, run);
        return new Disposable(() => this.commands.delete(name));
      },
      executeCommand: async (name, ...given) => {
        if (name === "workbench.action.openSettings") return this.opened.push(`settings ${given[0]}`);
        if (!this.commands.has(name)) throw new Error(`command '${name}' not found`);
        return this.commands.get(name)(...given);
      },
    };
  }

  forEnv() {
    return { appName: "stand-in", language: "en", openExternal: async (uri) => this.opened.push(`outside ${uri}`) > 0 };
  }

  forLanguages() {
    const all = { match: (selector, document) => (matches(selector, document) ? 10 : 0) };
    for (const kind of ["CodeActions", "CodeLens", "CompletionItem", "Declaration", "Definition", "DocumentFormattingEdit", "DocumentHighlight", "DocumentLink", "DocumentRangeFormattingEdit", "DocumentRangeSemanticTokens", "DocumentSemanticTokens", "DocumentSymbol", "FoldingRange", "Hover", "Implementation", "InlayHints", "OnTypeFormattingEdit", "Reference", "Rename", "SelectionRange", "SignatureHelp", "TypeDefinition"])
      all[`register${kind}Provider`] = (selector, provider, ...more) => this.provide({ kind, selector, provider, more });
    all.registerWorkspaceSymbolProvider = (provider) => this.provide({ kind: "WorkspaceSymbol", selector: [], provider });
    all.createDiagnosticCollection = (owner) => this.collection(owner ?? "");
    return all;
  }

  provide(one) {
    this.providers.push(one);
    return new Disposable(() => (this.providers = this.providers.filter((p) => p !== one)));
  }

  // provider gives what serves a document with one kind of thing.
  provider(kind, document) {
    const found = this.providers.find((p) => p.kind === kind && (!document || matches(p.selector, document)));
    if (!found) throw new Error(`nothing serves ${kind}`);
    return found.provider;
  }

  collection(owner) {
    const key = (uri) => `${uri} ${owner}`;
    const put = (uri, list) => {
      this.diagnostics.set(key(uri), list ?? []);
      this.on.diagnostics.fire();
    };
    return {
      name: owner,
      set: (uri, list) => (Array.isArray(uri) ? uri.forEach((pair) => put(...pair)) : put(uri, list)),
      delete: (uri) => put(uri, []),
      get: (uri) => this.diagnostics.get(key(uri)),
      has: (uri) => this.diagnostics.has(key(uri)),
      clear: () => this.diagnostics.clear(),
      forEach: () => {},
      dispose: () => this.diagnostics.clear(),
    };
  }

  // findings gives what is said of a document, by every owner.
  findings(document) {
    return [...this.diagnostics].filter(([key]) => key.startsWith(`${document.uri} `)).flatMap(([, list]) => list);
  }

  forWindow() {
    const tell = (kind) => async (said, ...buttons) => {
      this.said.push({ kind, said, buttons: buttons.filter((b) => typeof b === "string") });
      return this.answers.shift();
    };
    const note = (level) => (...said) => void this.log.push(`${level}: ${said.join(" ")}`);
    const editor = this;
    return {
      get activeTextEditor() {
        return editor.active && { document: editor.active };
      },
      get visibleTextEditors() {
        return editor.documents.map((document) => ({ document }));
      },
      tabGroups: { all: [], onDidChangeTabs: this.on.tabs.event },
      onDidChangeActiveTextEditor: this.on.active.event,
      onDidChangeVisibleTextEditors: this.on.visible.event,
      createOutputChannel: () => ({ name: "maltwright", logLevel: 3, onDidChangeLogLevel: this.on.level.event, show: () => this.opened.push("log"), append: note("log"), appendLine: note("log"), trace: note("trace"), debug: note("debug"), info: note("info"), warn: note("warn"), error: note("error"), clear() {}, hide() {}, replace() {}, dispose() {} }),
      createStatusBarItem: (id) => {
        const item = { id, visible: false, show: () => (item.visible = true), hide: () => (item.visible = false), dispose: () => (item.visible = false) };
        this.status.push(item);
        return item;
      },
      createWebviewPanel: (type, title, column, options) => {
        const panel = { type, title, options, reveal() {}, onDidDispose: () => new Disposable(() => {}), dispose() {}, webview: { html: "", cspSource: "'self'", asWebviewUri: (uri) => uri } };
        this.panels.push(panel);
        return panel;
      },
      showErrorMessage: tell("error"),
      showWarningMessage: tell("warning"),
      showInformationMessage: tell("information"),
      showQuickPick: async (lines) => {
        this.said.push({ kind: "choice", lines });
        return lines[this.answers.shift()];
      },
      showTextDocument: async (what) => void this.opened.push(String(what.uri ?? what)),
      withProgress: (_, run) => run({ report() {} }, new CancellationTokenSource().token),
    };
  }

  forWorkspace() {
    const on = (name) => this.on[name].event;
    const editor = this;
    return {
      get workspaceFolders() {
        return editor.folders;
      },
      get textDocuments() {
        return editor.documents;
      },
      notebookDocuments: [],
      getWorkspaceFolder: () => this.folders[0],
      getConfiguration: (section) => this.configuration(section),
      applyEdit: async (edit) => this.on.edit.fire(edit) ?? true,
      createFileSystemWatcher: () => ({ onDidCreate: on("created"), onDidChange: on("rewritten"), onDidDelete: on("deleted"), dispose() {} }),
      fs: { readFile: async (uri) => fs.readFileSync(uri.path), stat: async (uri) => ({ type: fs.statSync(uri.path).isDirectory() ? 2 : 1 }) },
      ...Object.fromEntries(["DidChangeConfiguration", "DidChangeWorkspaceFolders", "DidOpenTextDocument", "DidChangeTextDocument", "DidCloseTextDocument", "DidSaveTextDocument", "WillSaveTextDocument", "DidOpenNotebookDocument", "DidChangeNotebookDocument", "DidCloseNotebookDocument", "DidSaveNotebookDocument", "DidCreateFiles", "DidRenameFiles", "DidDeleteFiles", "WillCreateFiles", "WillRenameFiles", "WillDeleteFiles"].map((name) => [`on${name}`, on(name)])),
    };
  }

  configuration(section) {
    const under = (prefix) => {
      if (prefix in this.settings) return this.settings[prefix];
      const all = {};
      for (const [name, value] of Object.entries(this.settings)) {
        if (!name.startsWith(prefix + ".")) continue;
        const parts = name.slice(prefix.length + 1).split(".");
        const last = parts.pop();
        parts.reduce((at, part) => (at[part] ??= {}), all)[last] = value;
      }
      return Object.keys(all).length ? all : undefined;
    };
    return { get: (name, otherwise) => under(section ? `${section}.${name}` : name) ?? otherwise };
  }

  // set changes a setting, as a person does.
  set(name, value) {
    this.settings[name] = value;
    this.on.DidChangeConfiguration.fire({ affectsConfiguration: (asked) => name === asked || name.startsWith(asked + ".") });
  }

  open(file) {
    const document = new Document(Uri.file(file), "malt", fs.readFileSync(file, "utf8"));
    this.documents.push(document);
    this.active = document;
    this.on.DidOpenTextDocument.fire(document);
    this.on.visible.fire(this.documents);
    this.on.active.fire({ document });
    return document;
  }

  type(document, old, text) {
    this.on.DidChangeTextDocument.fire({ document, contentChanges: [document.replace(old, text)] });
  }

  save(document) {
    this.on.WillSaveTextDocument.fire({ document, reason: 1, waitUntil() {} });
    fs.writeFileSync(document.fileName, document.text);
    document.isDirty = false;
    this.on.DidSaveTextDocument.fire(document);
  }

  // until waits for something to be so, and says what was waited for where it does not come.
  async until(what, holds, seconds = 120) {
    for (const end = Date.now() + seconds * 1000; Date.now() < end; await new Promise((go) => setTimeout(go, 10))) {
      const found = holds();
      if (found) return found;
    }
    throw new Error(`${what} did not come; the log:\n${this.log.join("\n")}\nsaid: ${JSON.stringify(this.said)}`);
  }
}

function matches(selector, document) {
  return [selector].flat().some((one) => (!one.language || one.language === document.languageId) && (!one.scheme || one.scheme === document.uri.scheme));
}

module.exports = { Editor, CancellationTokenSource };
