// The chart of a file in a window of the editor, and its sheet on paper.
"use strict";

const vscode = require("vscode");

const names = { chart: "maltwright.chart", sheet: "maltwright.sheet" };
const pictures = Object.values(names);

// How wide charts are drawn, px: for a whole window, and for half of one. Letters are not made smaller than they are drawn by much.
const [wideDesk, wideTab] = [900, 480];

class Pictures {
  constructor(server) {
    this.server = server;
    this.panels = new Map(); // by the name of what is drawn
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
    return this.asked(command, [this.server.toServer(of)]);
  }

  // asked runs a command of the server, and shows what comes of it where that is a picture. The first of the
  // arguments is the name of a file as the server has it.
  async asked(command, given, next = (args) => this.server.ask("workspace/executeCommand", { command, arguments: args })) {
    if (!pictures.includes(command)) return next(given);
    try {
      const [uri, options] = given;
      const files = [];
      for (const wide of command === names.chart ? [wideDesk, wideTab] : [undefined]) files.push(await next([uri, { ...options, wide }]));
      if (typeof files[0] !== "string") return vscode.window.showErrorMessage("The server does not run, or is too old to draw. maltwright: Show the Log says more.");
      if (command === names.chart) await this.showChart(uri, ...files.map((file) => this.server.toEditor(file)));
      else await vscode.env.openExternal(this.server.toEditor(files[0]));
      return files[0];
    } catch (fault) {
      return vscode.window.showErrorMessage(`It cannot be drawn: ${fault.message}`);
    }
  }

  async showChart(key, desk, tab) {
    let panel = this.panels.get(key);
    if (!panel) {
      const beside = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
      panel = vscode.window.createWebviewPanel("maltwright.chart", "Chart", beside, { enableScripts: false, localResourceRoots: [vscode.Uri.joinPath(desk, "..")] });
      panel.onDidDispose(() => this.panels.delete(key));
      this.panels.set(key, panel);
    } else panel.reveal(undefined, true);
    const drawing = new TextDecoder().decode(await vscode.workspace.fs.readFile(desk));
    const said = { title: inside(drawing, "title"), says: inside(drawing, "desc") };
    panel.title = plain(said.title) || "Chart";
    const fresh = (file) => panel.webview.asWebviewUri(file).with({ query: String(Date.now()) }); // not out of a cache
    panel.webview.html = page(panel.webview.cspSource, fresh(desk), fresh(tab), said);
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
function page(source, desk, tab, { title, says }) {
  const quoted = (text) => text.replace(/"/g, "&quot;");
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src ${source}; style-src 'unsafe-inline'">
<title>${title}</title>
<style>
body { margin: 0; padding: 1em; }
img { display: block; width: 100%; max-width: 1100px; height: auto; color-scheme: light; }
body.vscode-dark img, body.vscode-high-contrast:not(.vscode-high-contrast-light) img { color-scheme: dark; }
</style>
</head>
<body><picture><source media="(max-width: ${wideDesk - 150}px)" srcset="${tab}"><img src="${desk}" alt="${quoted(says || title)}"></picture></body>
</html>`;
}

module.exports = { Pictures, page };
