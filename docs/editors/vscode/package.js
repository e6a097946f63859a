#!/usr/bin/env node
// Packs the extension: node package.js OUT.vsix [VERSION]
//
// VERSION is that of the program: 1.2.3, or 0.0.0-20260306070809.g104b3ffdcc11 of a commit that has no other. An editor knows of
// three numbers alone, so the last of the second is its time, and a newer one replaces an older; description and CHANGELOG.md name it whole.
//
// What is loaded of other people is put into one file with ours, beside a file of their licences.
// The same sources, version and SOURCE_DATE_EPOCH (seconds; by default the first day that a zip can
// name) give the same bytes. Modules are taken from MALTWRIGHT_VSCODE, a folder in which
// npm install was run with our package.json, or else from this folder.
"use strict";

const { execFileSync } = require("node:child_process");
const fs = require("node:fs");
const os = require("node:os");
const path = require("node:path");

const here = __dirname;
const carried = ["README.md", "CHANGELOG.md", "LICENSE", "icon.png", "icon.svg", "language-configuration.json", "snippets/malt.json", "syntaxes/malt.tmLanguage.json"];
const notShipped = ["dependencies", "devDependencies", "overrides", "scripts"];
const firstOfZip = "315532800"; // 1980-01-01

function main([out, version]) {
  if (!out) stop("say where to write: node package.js OUT.vsix [VERSION]");
  const modules = path.join(process.env.MALTWRIGHT_VSCODE ?? here, "node_modules");
  if (!fs.existsSync(path.join(modules, "@vscode", "vsce"))) stop(`there is no vsce in ${modules}: run npm install --ignore-scripts beside our package.json`);
  const stage = fs.mkdtempSync(path.join(os.tmpdir(), "extension-"));
  try {
    for (const file of carried) put(stage, file, fs.readFileSync(path.join(here, file)));
    if (version) put(stage, "CHANGELOG.md", changes(version));
    put(stage, ".vscodeignore", ""); // all that is there is wanted
    put(stage, "package.json", manifest(version));
    const { outputFiles, metafile } = bundle(modules);
    put(stage, "extension.js", outputFiles[0].contents);
    put(stage, "third-party.txt", licences(modules, metafile));
    const env = { ...process.env, SOURCE_DATE_EPOCH: process.env.SOURCE_DATE_EPOCH ?? firstOfZip, TZ: "UTC", LC_ALL: "C" };
    const vsce = path.join(modules, "@vscode", "vsce", "vsce");
    const args = [vsce, "package", "--no-dependencies", "--allow-missing-repository", "--out", path.resolve(out)];
    execFileSync(process.execPath, args, { cwd: stage, env, stdio: ["ignore", "ignore", "inherit"] });
  } finally {
    fs.rmSync(stage, { recursive: true });
  }
  console.log(`${out}: ${Math.round(fs.statSync(out).size / 1024)} KiB`);
}

function stop(why) {
  console.error(`package.js: ${why}`);
  process.exit(2);
}

function put(stage, file, contents) {
  const to = path.join(stage, file);
  fs.mkdirSync(path.dirname(to), { recursive: true });
  fs.writeFileSync(to, contents);
  fs.chmodSync(to, 0o644);
}

function manifest(version) {
  const own = JSON.parse(fs.readFileSync(path.join(here, "package.json"), "utf8"));
  for (const key of notShipped) delete own[key];
  if (version) {
    own.version = numbers(version);
    own.description += ` Of maltwright ${version}.`;
  }
  return JSON.stringify(own, null, 2) + "\n";
}

// numbers are the three that an editor takes for a version.
function numbers(version) {
  const [, plain, time] = /^(\d+\.\d+\.\d+)(?:-([1-9]\d{13})\b)?/.exec(version) ?? stop(`${version} is no version: it begins with three numbers, such as 1.2.3`);
  return time ? plain.replace(/\d+$/, time) : plain;
}

// changes are what changed, with the version in place of the heading of what has none yet.
function changes(version) {
  const text = fs.readFileSync(path.join(here, "CHANGELOG.md"), "utf8");
  const of = numbers(version) === version ? "" : `, of maltwright ${version}`;
  if (!text.includes("\n## Unreleased\n")) return text;
  return text.replace("\n## Unreleased\n", `\n## ${numbers(version)}${of}\n`);
}

// bundle gives extension.js with all that it requires, but for what the editor brings itself.
function bundle(modules) {
  return require(path.join(modules, "esbuild")).buildSync({
    entryPoints: ["extension.js"],
    absWorkingDir: here,
    nodePaths: [modules],
    bundle: true,
    write: false,
    metafile: true,
    minify: true,
    legalComments: "none",
    platform: "node",
    target: "node20",
    external: ["vscode"],
  });
}

// licences are those of every package that is in the bundle.
function licences(modules, metafile) {
  const names = new Set();
  for (const file of Object.keys(metafile.inputs)) {
    const name = /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(file)?.[1];
    if (name) names.add(name);
  }
  const parts = [...names].sort().map((name) => {
    const folder = path.join(modules, name);
    const { version, license } = JSON.parse(fs.readFileSync(path.join(folder, "package.json"), "utf8"));
    const file = fs.readdirSync(folder).find((f) => /^licen[cs]e/i.test(f));
    if (!file) throw new Error(`${name} has no licence`);
    return `${name} ${version} (${license})\n\n${fs.readFileSync(path.join(folder, file), "utf8").trim()}\n`;
  });
  return "What extension.js holds of other people, and on which terms.\n\n" + parts.join("\n" + "-".repeat(72) + "\n\n");
}

main(process.argv.slice(2));
