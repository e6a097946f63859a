// One session of the extension: the client, what it is told, and what people are told when it
// cannot run.
"use strict";

const vscode = require("vscode");
const { Due } = require("./due");
const { Endings } = require("./endings");
const { Pictures } = require("./pictures");
const { settings } = require("./settings");

const install = "docs/install.md of maltwright says where to get it";

class Session {
  // connect makes a client: see lib/server.js.
  constructor(context, connect) {
    this.context = context;
    this.connect = connect;
    this.client = undefined;
    this.turn = Promise.resolve(); // starts and stops wait for one another
    this.log = vscode.window.createOutputChannel("maltwright", { log: true });
    this.pictures = new Pictures(this);
    this.due = new Due(this);
    const command = (name, run) => vscode.commands.registerCommand(`maltwright.${name}`, run);
    context.subscriptions.push(
      this.log,
      this.pictures,
      this.due,
      command("restart", () => this.restart()),
      command("showLog", () => this.log.show()),
      command("showDue", () => this.due.show()),
      command("showChart", (uri) => this.pictures.chart(uri)),
      command("openSheet", (uri) => this.pictures.sheet(uri)),
      vscode.workspace.onDidChangeConfiguration((change) => {
        if (change.affectsConfiguration("maltwright.path")) return this.restart();
      }),
    );
  }

  start() {
    return (this.turn = this.turn.then(() => this.begin()));
  }

  stop() {
    return (this.turn = this.turn.then(() => this.end()));
  }

  restart() {
    this.stop();
    return this.start();
  }

  async begin() {
    const wanted = vscode.workspace.getConfiguration("maltwright").get("path");
    const endings = new Endings(() => this.tell({ kind: "ends" }, wanted));
    try {
      const client = await this.connect(wanted, this.options(endings), this.context);
      const log = client.error.bind(client);
      client.error = (said, data) => log(said, data, false); // people are told in our words, once
      this.client = client;
      await client.start();
      endings.began = true;
      const { name, version } = client.initializeResult?.serverInfo ?? {};
      this.log.info(`started ${name ?? "the server"} ${version ?? ""}`.trim());
      this.due.begin();
    } catch (fault) {
      await this.end();
      this.log.error(String(fault?.message ?? fault));
      this.tell(fault, wanted); // not awaited: it stands until somebody answers
    }
  }

  async end() {
    this.due.end();
    const client = this.client;
    this.client = undefined;
    await client?.dispose().catch((fault) => this.log.warn(String(fault?.message ?? fault)));
  }

  // ask sends a request, and gives undefined where no server runs or it does not know the request.
  async ask(method, params) {
    if (!this.client?.isRunning()) return undefined;
    try {
      return await this.client.sendRequest(method, params);
    } catch (fault) {
      if (fault?.code === -32601) return undefined; // no such method
      throw fault;
    }
  }

  // Names of files as the server has them, and as the editor has them.
  toServer(uri) {
    return this.client ? this.client.code2ProtocolConverter.asUri(uri) : uri.toString();
  }

  toEditor(uri) {
    return this.client ? this.client.protocol2CodeConverter.asUri(uri) : vscode.Uri.parse(uri);
  }

  options(errorHandler) {
    return {
      documentSelector: [
        { language: "malt", scheme: "file" },
        { language: "malt", scheme: "untitled" },
      ],
      errorHandler,
      initializationFailedHandler: () => false, // start rejects, and it is told there
      outputChannel: this.log,
      revealOutputChannelOn: 4, // never by itself: what matters is told where it happens
      initializationOptions: settings(),
      synchronize: { configurationSection: "maltwright", fileEvents: vscode.workspace.createFileSystemWatcher("**/*.csv") },
      middleware: {
        // A lens asks the server for a picture; what comes back is a file to be shown.
        executeCommand: (command, args, next) => this.pictures.asked(command, args, (given) => next(command, given)),
      },
    };
  }

  async tell(fault, wanted) {
    const [said, ...answers] = words(fault, wanted);
    const answer = await vscode.window.showErrorMessage(said, ...answers);
    if (answer === "Open Settings") return vscode.commands.executeCommand("workbench.action.openSettings", "maltwright.path");
    if (answer === "Try Again") return this.restart();
    if (answer === "Show the Log") return this.log.show();
  }
}

// words are what is said of a fault, and the buttons below it.
function words(fault, wanted) {
  switch (fault?.kind) {
    case "not found":
      return [`There is no program "${wanted}" on the PATH, so nothing is checked. Install maltwright (${install}), or say in the settings where it stands.`, "Open Settings", "Try Again"];
    case "too old": {
      const which = fault.version ? `${fault.version} at ${fault.file}` : `The program ${fault.file}`;
      return [`${which} cannot serve an editor, so nothing is checked. Install one of the version of this extension (${install}), or say in the settings where it stands.`, "Open Settings", "Try Again"];
    }
  }
  if (fault?.kind === "ends") return ["The maltwright server ended several times, and is not started again. What broke it stands in the log.", "Show the Log", "Try Again"];
  return [`The maltwright server did not start: ${fault?.message ?? fault}`, "Show the Log", "Try Again"];
}

module.exports = { Session, words };
