// What is due next in the batches of the folder, in the status line.
"use strict";

const vscode = require("vscode");

const minute = 60 * 1000;

class Due {
  constructor(server) {
    this.server = server;
    this.list = [];
    this.item = vscode.window.createStatusBarItem("maltwright.due", vscode.StatusBarAlignment.Left, 10);
    this.item.name = "maltwright: what is due";
    this.item.command = "maltwright.showDue";
    this.stops = [
      this.item,
      vscode.workspace.onDidSaveTextDocument((document) => document.languageId === "malt" && this.refresh()),
      vscode.workspace.onDidChangeConfiguration((change) => change.affectsConfiguration("maltwright.due") && this.refresh()),
      vscode.workspace.onDidChangeWorkspaceFolders(() => this.refresh()),
    ];
  }

  begin() {
    this.end();
    this.clock = setInterval(() => this.refresh(), minute);
    return this.refresh();
  }

  end() {
    clearInterval(this.clock);
    this.clock = undefined;
    this.take([]);
  }

  async refresh() {
    const wanted = this.clock !== undefined && vscode.workspace.getConfiguration("maltwright").get("due", true);
    const list = wanted ? await this.server.ask("maltwright/due", {}).catch((fault) => void this.server.log.warn(`due: ${fault.message}`)) : [];
    if (this.clock !== undefined || !wanted) this.take(list ?? []);
  }

  take(list) {
    this.list = list;
    const [next] = list;
    if (!next) return this.item.hide();
    this.item.text = `$(${next.late ? "warning" : "clock"}) ${line(next)}`;
    this.item.tooltip = [...list.slice(0, 8).map(line), ...(list.length > 8 ? [`and ${list.length - 8} more`] : [])].join("\n");
    this.item.backgroundColor = next.late ? new vscode.ThemeColor("statusBarItem.warningBackground") : undefined;
    this.item.accessibilityInformation = { label: `${next.late ? "late" : "due next"}: ${line(next)}` };
    this.item.show();
  }

  // show lists all that is due; what is chosen is opened.
  async show() {
    await this.refresh();
    if (this.list.length === 0) return vscode.window.showInformationMessage("Nothing is due in this folder.");
    const lines = this.list.map((due) => ({ label: due.text, description: due.time, detail: due.batch, due }));
    const chosen = await vscode.window.showQuickPick(lines, { title: "What is due", matchOnDescription: true, matchOnDetail: true });
    if (chosen?.due.uri) await vscode.window.showTextDocument(this.server.toEditor(chosen.due.uri));
  }

  dispose() {
    this.end();
    for (const stop of this.stops) stop.dispose();
  }
}

function line(due) {
  return [due.time, due.batch, due.text].filter(Boolean).join(" · ");
}

module.exports = { Due };
