// Connects the editor with the program, which runs beside it and talks over its standard streams.
"use strict";

const { LanguageClient } = require("vscode-languageclient/node");
const { serves } = require("./program");

// connect gives a client that is not started yet. It rejects with NotFound or TooOld.
// The program starts in the folder of the extension: it is told where files are, and a folder that
// is opened is no place to look for programs in.
async function connect(wanted, options, context) {
  const command = await serves(wanted, process.env);
  const run = { command, args: ["lsp"], options: { cwd: context.extensionPath } };
  return new LanguageClient("maltwright", "maltwright", run, options);
}

module.exports = { connect };
