// Finds the program on this machine and asks whether it can serve an editor.
"use strict";

const { execFile } = require("node:child_process");
const fs = require("node:fs");
const os = require("node:os");
const path = require("node:path");

// How long a program may take to say what it is.
const patience = 15000;

// NotFound says that no file is the program that is set.
class NotFound extends Error {
  constructor(wanted) {
    super(`${wanted} is not on the PATH`);
    this.kind = "not found";
    this.wanted = wanted;
  }
}

// TooOld says that the file is no program that serves editors.
class TooOld extends Error {
  constructor(file, version) {
    super(`${file} cannot serve an editor`);
    this.kind = "too old";
    this.file = file;
    this.version = version;
  }
}

// find gives the whole path of the program. A bare name is looked for in the folders of the PATH
// and where Go and people put programs of their own. Folders that are not whole paths are passed
// over, and so is the folder of the files: what is opened must never bring a program with it.
function find(wanted, env = process.env, home = os.homedir(), platform = process.platform) {
  const name = wanted.trim().replace(/^~(?=[\\/])/, home);
  if (path.isAbsolute(name)) {
    const file = endings(name, platform).find(runs);
    if (file) return file;
    throw new NotFound(wanted);
  }
  if (name === "" || /[\\/]/.test(name)) throw new NotFound(wanted);
  const folders = (env.PATH ?? env.Path ?? "").split(path.delimiter).filter(path.isAbsolute);
  if (env.GOBIN) folders.push(env.GOBIN);
  folders.push(path.join(home, "go", "bin"), path.join(home, ".local", "bin"));
  for (const folder of folders) {
    const file = endings(path.join(folder, name), platform).find(runs);
    if (file) return file;
  }
  throw new NotFound(wanted);
}

function endings(name, platform) {
  return platform === "win32" && !/\.exe$/i.test(name) ? [name + ".exe"] : [name];
}

function runs(file) {
  try {
    fs.accessSync(file, fs.constants.X_OK);
    return fs.statSync(file).isFile();
  } catch {
    return false;
  }
}

// ask gives what a call of the program says, or rejects where it ends with a fault.
function ask(file, args) {
  return new Promise((resolve, reject) => {
    execFile(file, args, { timeout: patience, cwd: path.dirname(file) }, (fault, said) => (fault ? reject(fault) : resolve(said)));
  });
}

// serves gives the path of a program that has the command lsp.
async function serves(wanted, env) {
  const file = find(wanted, env);
  try {
    await ask(file, ["lsp", "--help"]);
  } catch {
    const version = await ask(file, ["version"]).catch(() => "");
    throw new TooOld(file, /^maltwright /.test(version) ? version.split(/[,\n]/)[0].trim() : "");
  }
  return file;
}

module.exports = { NotFound, TooOld, find, serves };
