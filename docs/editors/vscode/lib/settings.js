// The settings that the server is told of: those of the section, but for what the editor itself does.
"use strict";

const vscode = require("vscode");

function settings() {
  const section = vscode.workspace.getConfiguration("maltwright");
  const asked = (name) => section.get(name, true);
  return {
    forecast: asked("forecast"),
    lenses: asked("lenses"),
    start: section.get("start", ""),
    show: false, // charts and sheets are shown here
    hints: { ends: asked("hints.ends"), gates: asked("hints.gates"), readings: asked("hints.readings") },
  };
}

module.exports = { settings };
