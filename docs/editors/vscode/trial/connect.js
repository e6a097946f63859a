// The extension in an editor that runs in a browser. It cannot start programs there: requests go
// over HTTP to serve.js, which hands them to the program, and files come from there as well. All
// else is the extension itself.
"use strict";

const vscode = require("vscode");
const { LanguageClient } = require("vscode-languageclient/browser");
const { AbstractMessageReader, AbstractMessageWriter } = require("vscode-languageserver-protocol");
const { Session } = require("../lib/session");

const scheme = "trial";

exports.activate = async (context) => {
  const base = context.extensionUri.with({ path: "" }).toString(true).replace(/\/$/, "");
  context.subscriptions.push(vscode.workspace.registerFileSystemProvider(scheme, new Files(base)));
  new Session(context, (wanted, options) => connect(base, options)).start(); // files are wanted before it is there
};

async function connect(base, options) {
  const id = String(Math.random()).slice(2);
  options.documentSelector = [{ language: "malt", scheme }];
  options.uriConverters = {
    code2Protocol: (uri) => uri.with({ scheme: "file" }).toString(),
    protocol2Code: (text) => vscode.Uri.parse(text).with({ scheme }),
  };
  const url = `${base}/talk/${id}`;
  return new LanguageClient("maltwright", "maltwright", async () => ({ reader: new Reader(url), writer: new Writer(url) }), options);
}

class Reader extends AbstractMessageReader {
  constructor(url) {
    super();
    this.url = url;
  }
  listen(heard) {
    this.source = new EventSource(this.url);
    this.source.onmessage = (event) => heard(JSON.parse(event.data));
    return { dispose: () => this.source.close() };
  }
}

class Writer extends AbstractMessageWriter {
  constructor(url) {
    super();
    this.url = url;
    this.turn = Promise.resolve();
  }
  write(message) {
    return (this.turn = this.turn.then(() => fetch(this.url, { method: "POST", body: JSON.stringify(message) })));
  }
  end() {}
}

// Files are those of the machine that serve.js runs on.
class Files {
  constructor(base) {
    this.base = base;
    this.changes = new vscode.EventEmitter();
    this.onDidChangeFile = this.changes.event;
  }
  async ask(what, uri, options) {
    const answer = await fetch(`${this.base}/${what}?${new URLSearchParams({ path: uri.path })}`, options);
    if (!answer.ok) throw vscode.FileSystemError.FileNotFound(uri);
    return answer;
  }
  watch() {
    return { dispose() {} };
  }
  stat(uri) {
    return this.ask("stat", uri).then((a) => a.json());
  }
  readDirectory(uri) {
    return this.ask("list", uri).then((a) => a.json());
  }
  readFile(uri) {
    return this.ask("file", uri).then(async (a) => new Uint8Array(await a.arrayBuffer()));
  }
  async writeFile(uri, body) {
    await this.ask("file", uri, { method: "PUT", body });
  }
  createDirectory() {}
  delete() {}
  rename() {}
}
