// The chart of a file in a window of the editor, and its sheet on paper.
"use strict";

const vscode = require("vscode");

const names = { chart: "maltwright.chart", sheet: "maltwright.sheet" };

class Pictures {
  constructor(server) {
    this.server = server;
    this.panels = new Map(); // by the file of the chart
  }

  chart(uri) {
    return this.draw(names.chart, uri);
  }

  sheet(uri) {
    return this.draw(names.sheet, uri);
  }

  // draw asks the server for a picture of a file, by default of the one that is being looked at.
  async draw(command, uri) {
    const of = uri ?? vscode.window.activeTextEditor?.document.uri;
    if (!of) return vscode.window.showInformationMessage("Open a process or the record of a batch first.");
    try {
      const answer = await this.server.ask("workspace/executeCommand", { command, arguments: [this.server.toServer(of)] });
      if (answer === undefined) return vscode.window.showErrorMessage("The server does not run, or is too old to draw. maltwright: Show the Log says more.");
      return await this.answered(command, answer);
    } catch (fault) {
      return vscode.window.showErrorMessage(`It cannot be drawn: ${fault.message}`);
    }
  }

  // answered shows what a command of the server came to, where it is a picture, and gives it on.
  async answered(command, answer) {
    if (typeof answer !== "string") return answer;
    if (command === names.chart) await this.showChart(this.server.toEditor(answer));
    if (command === names.sheet) await vscode.env.openExternal(this.server.toEditor(answer));
    return answer;
  }

  async showChart(file) {
    const folder = vscode.Uri.joinPath(file, "..");
    const key = file.toString();
    let panel = this.panels.get(key);
    if (!panel) {
      const beside = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
      panel = vscode.window.createWebviewPanel("maltwright.chart", "Chart", beside, { enableScripts: false, localResourceRoots: [folder] });
      panel.onDidDispose(() => this.panels.delete(key));
      this.panels.set(key, panel);
    } else panel.reveal(undefined, true);
    const drawing = new TextDecoder().decode(await vscode.workspace.fs.readFile(file));
    const said = { title: inside(drawing, "title"), says: inside(drawing, "desc") };
    panel.title = plain(said.title) || "Chart";
    const source = panel.webview.asWebviewUri(file).with({ query: String(Date.now()) }); // drawn anew, not out of a cache
    panel.webview.html = page(panel.webview.cspSource, source, said);
  }

  dispose() {
    for (const panel of this.panels.values()) panel.dispose();
  }
}

// inside gives the text of an element of a drawing, still escaped.
function inside(drawing, element) {
  return new RegExp(`<${element}[^>]*>([^<]*)<`).exec(drawing)?.[1] ?? "";
}

function plain(text) {
  const signs = { "&lt;": "<", "&gt;": ">", "&quot;": '"', "&#34;": '"', "&#39;": "'", "&amp;": "&" };
  return text.replace(/&(lt|gt|quot|#34|#39|amp);/g, (sign) => signs[sign]);
}

// page shows a drawing as wide as there is room, dark where the editor is dark. It holds no script.
function page(source, drawing, { title, says }) {
  const quoted = (text) => text.replace(/"/g, "&quot;");
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src ${source}; style-src 'unsafe-inline'">
<title>${title}</title>
<style>
body { margin: 0; padding: 1em; }
img { display: block; max-width: 100%; height: auto; color-scheme: light; }
body.vscode-dark img, body.vscode-high-contrast:not(.vscode-high-contrast-light) img { color-scheme: dark; }
</style>
</head>
<body><img src="${drawing}" alt="${quoted(says || title)}"></body>
</html>`;
}

module.exports = { Pictures, page };
